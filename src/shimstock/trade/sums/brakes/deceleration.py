from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import Of, a_sum

GRAVITY = 9.80665


@a_sum(example="--speed '12 mph' --distance '18 ft'", cautions=(BRAKES,))
def deceleration(
    *,
    speed: Annotated[float, Of("km/h", above=0, most=200)],
    distance: Annotated[float, Of("m", above=0, most=1000)],
) -> Worked[float]:
    """Mean deceleration from the speed and the distance it took to stop.

    speed: speed when the brake began to bite, in km/h.
    distance: distance from there to standing still, in m.
    Source: uniform deceleration, a = v²/(2·s).

    >>> round(deceleration(speed=30, distance=30**2 / 92).value, 3)
    3.549
    """
    w = Working()
    w.given("V", speed, "km/h", meaning="speed")
    w.given("s", distance, "m", meaning="distance")
    v = w.step("v", "V/3.6", speed / 3.6, "m/s")
    a = w.step("a", "v²/(2·s)", v**2 / (2 * distance), "m/s2", answer="deceleration")
    w.step("z", "100·a/9.80665", 100 * a / GRAVITY, "%", meaning="of gravity", answer="of gravity")
    w.step("t", "v/a", v / a, "s", meaning="braking time", answer="time")
    return Worked(a, w)
