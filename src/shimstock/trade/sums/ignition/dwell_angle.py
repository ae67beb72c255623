from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._sparks import Cylinders


@a_sum(example="--share 58 --cylinders 6", cautions=(BOOK_FIRST, SHOCK))
def dwell_angle(
    *, share: Annotated[float, Of("%", above=0, below=100)], cylinders: Cylinders
) -> Worked[float]:
    """Dwell in degrees of the distributor from its share in per cent, as other meters show it.

    share: of the time that the points are shut, in %.
    cylinders: lobes of the cam, a count.
    Source: geometry, angle = share·360/z.

    >>> dwell_angle(share=50, cylinders=4).value
    45.0
    """
    w = Working()
    w.given("d", share, "%", meaning="share of the time shut")
    w.given("z", cylinders, "", meaning="lobes")
    angle = share / 100 * 360 / cylinders
    w.step("α", "d/100·360/z", angle, "deg", meaning="dwell", answer="angle")
    return Worked(angle, w)
