from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--speed 975 --ratio 72 --radius '24 in' --slip 5 --in mph", cautions=(ROLLOVER,))
def ground_speed(
    *,
    speed: Annotated[float, Of("rpm", least=0, found="rated speed")],
    ratio: Annotated[float, Of("", above=0)],
    radius: Annotated[float, Of("m", above=0, most=1.5)] | None = None,
    circumference: Annotated[float, Of("m", above=0, most=10)] | None = None,
    slip: Annotated[float, Of("%", least=0, below=100)] = 0.0,
) -> Worked[float]:
    """Ground speed from engine speed, the whole reduction to the wheel, and the tyre.

    speed: of the engine, in rpm.
    ratio: turns of the engine for one of the wheel, no unit.
    radius: of the tyre as it rolls loaded, in m.
    circumference: rolled in one turn, in the place of the radius, in m.
    slip: of the wheel, in %.
    Raises NotPossible where not exactly one of radius and circumference is given.
    Source: geometry, v = n·C/i·(1 − s); in mph with a radius in inches it is n·r/(168·i).

    >>> round(ground_speed(speed=1500, ratio=100, circumference=4, slip=10).value, 3)
    3.24
    """
    if (radius is None) == (circumference is None):
        rule = "or the circumference: exactly one is wanted"
        raise NotPossible("the tyre's radius", rule, "type --radius or --circumference")
    w = Working()
    w.given("n", speed, "rpm", meaning="engine")
    w.given("i", ratio, "", meaning="turns of the engine for one of the wheel")
    w.given("s", slip, "%", meaning="slip")
    if circumference is not None:
        rolled = w.given("C", circumference, "m", meaning="rolled in a turn")
    else:
        r = w.given("r", radius or 0.0, "m", meaning="rolling radius")
        rolled = w.step("C", "2·π·r", 2 * pi * r, "m", meaning="rolled in a turn")
    v = 0.06 * speed * rolled / ratio * (1 - slip / 100)
    w.step("v", "0.06·n·C/i·(1 − s/100)", v, "km/h", meaning="over the ground", answer="speed")
    return Worked(v, w)
