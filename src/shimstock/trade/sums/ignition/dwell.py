from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._sparks import Cylinders, Speed, sparks_a_second


@dataclass(frozen=True)
class Dwell:
    """Share of the time the points are shut, in per cent, and that time in ms."""

    share: float
    closed: float


@a_sum(example="--angle 52 --cylinders 4 --speed '1650 rpm'", cautions=(BOOK_FIRST, SHOCK))
def dwell(
    *,
    angle: Annotated[float, Of("deg", above=0, below=360)],
    cylinders: Cylinders,
    speed: Speed = 1000.0,
) -> Worked[Dwell]:
    """Dwell of the points in degrees as a share of the cam, and the time the coil has to fill.

    angle: turn of the distributor through which the points are shut, in deg.
    cylinders: lobes of the cam, one for each cylinder, a count.
    speed: of the crankshaft of a four-stroke, in rpm.
    Raises NotPossible where the dwell is more than one lobe's share of the cam.
    Source: geometry, share = angle·z/360; the time is that share of the time between sparks.

    >>> round(dwell(angle=45, cylinders=4).value.share, 2)
    50.0
    """
    if angle >= 360 / cylinders:
        rule = f"must be below one lobe's {360 / cylinders:g} deg"
        raise NotPossible(f"dwell {angle:g} deg", rule, "look whether it is crank degrees")
    w = Working()
    w.given("α", angle, "deg", meaning="points shut, of the distributor")
    rate = sparks_a_second(w, speed, cylinders, "four-stroke")
    share = w.step("d", "100·α·z/360", 100 * angle * cylinders / 360, "%", answer="share")
    period = w.step("T", "1000/f", 1000 / rate, "ms", meaning="from one to the next",
                    answer="period")  # fmt: skip
    closed = w.step("t", "d/100·T", share / 100 * period, "ms", meaning="points shut",
                    answer="closed")  # fmt: skip
    w.step("α_o", "360/z − α", 360 / cylinders - angle, "deg", meaning="open", answer="open")
    return Worked(Dwell(share, closed), w)
