from math import hypot
from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--speed '15 mph' --deceleration '2.5 m/s2' --reaction '1 s' --slope -5",
    cautions=(BRAKES,),
)
def stopping_distance(
    *,
    speed: Annotated[float, Of("km/h", above=0, most=200)],
    deceleration: Annotated[float, Of("m/s2", above=0, most=20)],
    reaction: Annotated[float, Of("s", least=0)] = 1,
    slope: Annotated[float, Of("%", least=-100, most=100)] = 0,
) -> Worked[float]:
    """Distance to standing still from seeing the danger, on the level or on a slope.

    speed: speed of travel, in km/h.
    deceleration: what the brake gives on the level, in m/s2.
    reaction: from seeing to the brake biting, in s.
    slope: rise for each hundred along the road, negative downhill, in %.
    Raises NotPossible where the slope pulls harder than the brake holds.
    Source: uniform deceleration, s = v·t_r + v²/(2·a); one second to react is common practice, no
    source.

    >>> round(stopping_distance(speed=36, deceleration=5, reaction=1).value, 1)
    20.0
    """
    w = Working()
    w.given("V", speed, "km/h", meaning="speed")
    w.given("a", deceleration, "m/s2", meaning="on the level")
    w.given("t_r", reaction, "s", meaning="to react")
    w.given("p", slope, "%", meaning="slope, negative downhill")
    v = w.step("v", "V/3.6", speed / 3.6, "m/s")
    net = _on_slope(w, deceleration, slope)
    first = w.step("s_r", "v·t_r", v * reaction, "m", meaning="while reacting", answer="reaction")
    braked = w.step("s_b", "v²/(2·a_s)", v**2 / (2 * net), "m", answer="braking distance")
    total = w.step("s", "s_r + s_b", first + braked, "m", answer="distance")
    return Worked(total, w)


def _on_slope(w: Working, level: float, slope: float) -> float:
    """Deceleration left on the slope: gravity along it goes with the sine of its angle."""
    along = 9.80665 * slope / hypot(100, slope)
    w.step("a_g", "9.80665·p/√(100² + p²)", along, "m/s2", meaning="gravity along the slope")
    net = w.step("a_s", "a + a_g", level + along, "m/s2", meaning="on the slope")
    if net <= 0:
        raise NotPossible(
            f"deceleration {level:g} m/s2",
            f"does not hold on a slope of {written(slope)} %",
            "do not drive there; put the brake right first",
        )
    return net
