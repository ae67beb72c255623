from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, EXHAUST, RUNNING, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._sparks import Cylinders, Speed


@dataclass(frozen=True)
class Dwell:
    """Share of the time the points are shut, in per cent, and that time in ms at a known speed."""

    share: float
    closed: float | None


@a_sum(
    example="--angle 52 --cylinders 4 --speed '1650 rpm'",
    cautions=(BOOK_FIRST, SHOCK, RUNNING, EXHAUST),
)
def dwell(
    *,
    angle: Annotated[float, Of("deg", above=0, below=360)],
    cylinders: Cylinders,
    speed: Speed | None = None,
) -> Worked[Dwell]:
    """Dwell of the points in degrees as a share of the cam, and the time that the coil has to fill.

    angle: turn of the distributor through which the points are shut, in deg.
    cylinders: lobes of the cam, one for each cylinder, a count.
    speed: of the crankshaft of a four-stroke, where the time is wanted, in rpm.
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
    w.given("z", cylinders, "", meaning="lobes of the cam")
    share = 100 * angle * cylinders / 360
    w.step("d", "100·α·z/360", share, "%", meaning="of the time shut", answer="share")
    w.step("α_o", "360/z − α", 360 / cylinders - angle, "deg", meaning="points open", answer="open")
    return Worked(Dwell(share, None if speed is None else _shut(w, speed, cylinders, share)), w)


def _shut(w: Working, speed: float, cylinders: int, share: float) -> float:
    """Time in ms that the points are shut for each spark."""
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    period = 120_000 / (speed * cylinders)
    w.step("T", "120000/(n·z)", period, "ms", meaning="from spark to spark", answer="period")
    shut = share / 100 * period
    return w.step("t", "d/100·T", shut, "ms", meaning="points shut", answer="closed")
