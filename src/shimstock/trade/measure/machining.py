"""Machining to the next size: which one cleans up the worst place, and the finished bore."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.plausible import nominal_of
from shimstock.trade.numbers.limits import ON_THE_LINE
from shimstock.trade.numbers.quantity import convert, show
from shimstock.trade.numbers.working import Worked, Working

CLEAN_UP = 0.004
"""Inches on the diameter, where the book gives no allowance. Common practice, no source."""


@dataclass(frozen=True)
class NextSize:
    """A size on offer: how far from nominal, and the diameter when finished; in `unit`."""

    size: float
    finished: float
    unit: str

    @property
    def shown(self) -> str:
        """The size as it is ordered: +0.020 in."""
        text = f"{self.size:+.3f}".replace("-", "−")
        return f"{text} {self.unit}"


def next_size(figure: Figure, worst: float) -> Worked[NextSize | None]:
    """The smallest size on offer that cleans up the worst reading with the allowance.

    worst: the largest bore or smallest journal of the whole set, in the figure's unit. None where
    no size on offer is enough. A size that itself lies at or beyond the limit is offered only
    where every size does: then the limit is one of wear from each size, not of the metal left.
    Source: trade practice: size − largest reading ≥ clean-up allowance, on the diameter.
    """
    unit = figure.measured_in
    nominal, least = nominal_of(figure), allowance(figure)
    w = Working(source="trade practice: the smallest size that cleans up the worst place")
    w.given("N", nominal, unit, meaning="nominal")
    w.given("worst", worst, unit, meaning="worst reading of the set")
    meaning = (
        "least to take off, on the diameter"
        if figure.clean_up
        else ("least to take off, on the diameter; the book gives none, common practice, no source")
    )
    w.given("A", least, unit, meaning=meaning)
    for n, size in enumerate(_on_offer(figure), start=1):
        w.given(f"s_{n}", size, unit, meaning="size on offer")
        finished = w.step(f"D_{n}", f"N + s_{n}", nominal + size, unit, meaning="finished")
        down = size < 0
        taken = (worst - finished) if down else (finished - worst)
        formula = f"worst − D_{n}" if down else f"D_{n} − worst"
        w.step(f"C_{n}", formula, taken, unit, meaning="clean-up")
        if taken >= least - ON_THE_LINE * abs(worst):
            w.note(f"Clean-up of at least {show(least, unit)}: this size does.")
            return Worked(NextSize(size, finished, unit), w)
    w.note("No size on offer cleans up the worst place: a sleeve or a new part.")
    return Worked(None, w)


def allowance(figure: Figure) -> float:
    """Least to take off the worst place, on the diameter, in the figure's unit."""
    unit = figure.measured_in
    if figure.clean_up is None:
        return convert(CLEAN_UP, "in", unit)
    return convert(figure.clean_up.value, figure.clean_up.unit, unit)


def _on_offer(figure: Figure) -> list[float]:
    """Sizes from the least metal taken off to the most; those within the limit, where any is."""
    return usable_within_limit(figure) or _sizes(figure)


def _sizes(figure: Figure) -> list[float]:
    unit = figure.measured_in
    return sorted((convert(size.value, size.unit, unit) for size in figure.sizes), key=abs)


def usable_within_limit(figure: Figure) -> list[float]:
    """Sizes that leave a part within its limit, such as a drum; none where each has its own."""
    nominal, limit = nominal_of(figure), figure.allowed
    return [
        size
        for size in _sizes(figure)
        if limit is not None
        and (limit.high is None or nominal + size < limit.high)
        and (limit.low is None or nominal + size > limit.low)
    ]


def finished_bore(skirt: float, clearance: float, unit: str) -> Worked[float]:
    """The bore to finish to: the new piston as measured plus the clearance chosen.

    skirt: piston across the skirt, square to the pin; clearance: chosen; both in `unit`.
    Source: trade practice: the bore is finished to the piston in hand, not to the list.

    >>> round(finished_bore(5.7628, 0.0072, "in").value, 4)
    5.77
    """
    w = Working(source="trade practice: the bore is finished to the piston in hand")
    w.given("skirt", skirt, unit, meaning="new piston as measured, square to the pin")
    w.given("c", clearance, unit, meaning="clearance chosen")
    return Worked(w.step("D", "skirt + c", skirt + clearance, unit, meaning="finished bore"), w)
