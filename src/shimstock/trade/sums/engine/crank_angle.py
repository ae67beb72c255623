from math import asin, pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._crank import Rod, Stroke, check_rod


@a_sum(
    example="--stroke '6 3/4 in' --rod '13 1/2 in' --drop '0.300 in'", cautions=(BOOK_FIRST, CRANK)
)
def crank_angle(
    *, stroke: Stroke, rod: Rod, drop: Annotated[float, Of("mm", least=0)]
) -> Worked[float]:
    """Crank angle from top dead centre at which a piston has dropped so far, by depth gauge.

    For timing without a mark: the book's degrees come back from the drop that piston-position gives
    for them.

    stroke: travel of the piston, in mm.
    rod: length of the connecting rod between its eyes, in mm.
    drop: how far the piston is below its top, in mm.
    Raises NotPossible where the rod is not longer than the throw, or the drop beyond the stroke.
    Source: exact slider-crank geometry, by the law of cosines for the half angle.

    >>> round(crank_angle(stroke=300, rod=600, drop=89.231).value, 2)
    60.0
    """
    check_rod(stroke, rod)
    if drop > stroke:
        rule = f"is beyond the stroke, {stroke:g} mm"
        raise NotPossible(f"drop {drop:g} mm", rule, "measure it again")
    w = Working()
    w.given("L", stroke, "mm", meaning="stroke")
    w.given("l", rod, "mm", meaning="connecting rod")
    w.given("x", drop, "mm", meaning="piston below its top")
    r = w.step("r", "L/2", stroke / 2, "mm", meaning="throw of the crank")
    h = w.step("h", "r + l − x", r + rod - drop, "mm", meaning="crankshaft to piston pin")
    share = min(1.0, drop * (2 * rod - drop) / (4 * r * h))
    w.step("q", "min(1, x·(2·l − x)/(4·r·h))", share, "", meaning="square of sin(θ/2)")
    angle = 2 * asin(sqrt(share)) * 180 / pi
    w.step("θ", "2·arcsin(√(q))·180/π", angle, "deg", meaning="before or after top dead centre",
           answer="angle")  # fmt: skip
    return Worked(angle, w)
