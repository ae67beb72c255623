from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.shims._packs import nearest

TICKS = 1_000_000  # steps in one unit that shims are told apart by
LEAST = 1 / TICKS
MOST = 1e6


@a_sum(
    example="--target '0.85 mm' --shims '0.10, 0.15, 0.50 mm' --pieces '4, 2, 1'",
    cautions=(BOOK_FIRST,),
)
def shim_pack(
    *,
    target: Annotated[float, Of("length", above=0, most=MOST)],
    shims: Annotated[Sequence[float], Of("length", least=LEAST, most=MOST)],
    pieces: Annotated[Sequence[int], Of("", least=0)] | None = None,
    unit: str = "mm",
) -> Worked[tuple[int, ...]]:
    """The pack of shims from the drawer that comes nearest to a thickness.

    Least error first, then fewest pieces; every pack that could be nearest is looked at.

    target: thickness that is wanted, in `unit`.
    shims: thicknesses in the drawer, measured, each named once, in `unit`.
    pieces: how many there are of each, in the same order, a count; one of each where nothing is
        typed.
    unit: unit of the lengths, mm or in.
    Raises NotPossible without a shim, where pieces do not go with the shims, or where there are
    too many packs to look at.
    Source: common practice, no source: every pack is tried.

    >>> shim_pack(target=0.85, shims=[0.10, 0.15, 0.50], pieces=[4, 2, 1]).value
    (2, 1, 1)
    """
    unit = coherent(unit).length
    counts = [1] * len(shims) if pieces is None else list(pieces)
    if not shims or len(counts) != len(shims):
        rule = f"must go with the shims: {len(counts)} counts for {len(shims)} thicknesses"
        raise NotPossible("the pieces", rule, "name each thickness and how many there are of it")
    chosen = nearest([round(size * TICKS) for size in shims], counts, round(target * TICKS))
    taken = [(size, n) for size, n in zip(shims, chosen, strict=True) if n]
    w = Working()
    w.given("t_w", target, unit, meaning="wanted")
    _lines(w, taken, target, unit)
    return Worked(chosen, w)


def _lines(w: Working, taken: list[tuple[float, int]], target: float, unit: str) -> None:
    """The shims taken, what they come to, and how far that is off."""
    for i, (size, n) in enumerate(taken, start=1):
        w.given(f"s_{i}", size, unit)
        w.given(f"n_{i}", n, "", meaning="of these")
    shown = " + ".join(f"n_{i}·s_{i}" for i in range(1, len(taken) + 1)) or "0"
    thick = float(sum(n * size for size, n in taken))
    w.step("t", shown, thick, unit, answer="thickness")
    error = round((thick - target) * TICKS) / TICKS
    w.step("e", "t − t_w", thick - target, unit, meaning="above 0 is too thick", answer="error")
    w.tell("pack", " + ".join(f"{n} × {show(size, unit)}" for size, n in taken) or "no shim")
    way = "too thick" if error > 0 else "too thin"
    w.tell("off by", f"{show(abs(error), unit)} {way}" if error else "nothing")
    w.tell("pieces", f"{sum(n for _, n in taken)}")
