"""Freezing points of ethylene glycol in water by volume, and the line between two of them."""

from shimstock.trade.numbers.working import Working

# Share by volume in % and freezing point in °C: ASHRAE's data for aqueous ethylene glycol as a
# general property library fits them; 0 is water.
FREEZING: tuple[tuple[float, float], ...] = (
    (0, 0.0), (10, -3.6), (20, -9.0), (30, -15.7), (40, -24.8), (50, -37.1), (60, -52.0),
)  # fmt: skip
COLDEST = FREEZING[-1][1]
MOST = FREEZING[-1][0]
NEAR = (
    "Between the table's points a straight line is taken, which may be half a degree too hopeful: "
    "mix for some degrees colder than the frost you fear."
)


def share_for(w: Working, freezing: float) -> float:
    """Share by volume, in %, that freezes at `freezing`, whose symbol is t_f."""
    at = next(n for n in range(1, len(FREEZING)) if FREEZING[n][1] <= freezing)
    _between(w, at)
    (p_1, t_1), (p_2, t_2) = FREEZING[at - 1 : at + 1]
    share = p_1 + (p_2 - p_1) * (freezing - t_1) / (t_2 - t_1)
    return w.step("p", "p_1 + (p_2 − p_1)·(t_f − t_1)/(t_2 − t_1)", share, "%", answer="share",
                  meaning="ethylene glycol by volume")  # fmt: skip


def freezing_at(w: Working, share: float) -> float:
    """Freezing point, in degC, of a share by volume whose symbol is p."""
    at = next(n for n in range(1, len(FREEZING)) if FREEZING[n][0] >= share)
    _between(w, at)
    (p_1, t_1), (p_2, t_2) = FREEZING[at - 1 : at + 1]
    point = t_1 + (t_2 - t_1) * (share - p_1) / (p_2 - p_1)
    return w.step("t_f", "t_1 + (t_2 − t_1)·(p − p_1)/(p_2 − p_1)", point, "degC",
                  answer="freezing point")  # fmt: skip


def _between(w: Working, at: int) -> None:
    w.note(NEAR)
    for mark, (share, point) in zip("12", FREEZING[at - 1 : at + 1], strict=True):
        w.given(f"p_{mark}", share, "%", meaning="by volume, from the table")
        w.given(f"t_{mark}", point, "degC", meaning="freezes at, from the table")
