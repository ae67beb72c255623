from math import acos, pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._sparks import Cylinders


@a_sum(example="--gap '0.015 in' --lift '0.040 in' --cylinders 4", cautions=(BOOK_FIRST, SHOCK))
def dwell_from_gap(
    *,
    gap: Annotated[float, Of("length", above=0)],
    lift: Annotated[float, Of("length", above=0)],
    cylinders: Cylinders,
    unit: str = "in",
) -> Worked[float]:
    """About what dwell a points gap gives, and that a wider gap gives less of it.

    Good for the direction and the size of a change; a dwell meter or the book's angle decides,
    for the shape of the lobe is taken as a cosine.

    gap: widest opening of the points, in `unit`.
    lift: of the heel from the flat to the top of the lobe, in `unit`.
    cylinders: lobes of the cam, a count.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the gap is not less than the lift.
    Source: geometry of a cosine lobe, common practice for the direction, no source.

    >>> round(dwell_from_gap(gap=0.5, lift=1, cylinders=4, unit="mm").value, 1)
    45.0
    """
    if gap >= lift:
        rule = f"must be less than the lift of the lobe, {lift:g} {unit}"
        raise NotPossible(f"gap {gap:g} {unit}", rule, "look whether the two are swapped")
    w = Working()
    w.given("g", gap, unit, meaning="widest opening")
    w.given("h", lift, unit, meaning="lift of the lobe")
    w.given("z", cylinders, "", meaning="lobes")
    opened = acos(1 - 2 * gap / lift) * 2 / cylinders * 180 / pi
    w.step("α_o", "arccos(1 − 2·g/h)·2/z·180/π", opened, "deg", meaning="points open",
           answer="open")  # fmt: skip
    shut = 360 / cylinders - opened
    w.step("α", "360/z − α_o", shut, "deg", meaning="dwell", answer="dwell")
    slope = -180 / pi * 2 / cylinders / sqrt(gap * (lift - gap))
    w.step("s", "−180/π·2/z/√(g·(h − g))", slope, f"deg/{unit}", meaning="dwell for more gap")
    w.tell("wider gap", "less dwell" if slope < 0 else "more dwell")
    w.note("A wider gap opens the points earlier: less dwell, and the spark comes earlier.")
    return Worked(shut, w)
