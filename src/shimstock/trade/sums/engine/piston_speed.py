from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--stroke '6 3/4 in' --speed '975 rpm' --in ft/min")
def piston_speed(
    *,
    stroke: Annotated[float, Of("mm", above=0, most=1000, found="stroke")],
    speed: Annotated[float, Of("rpm", least=0, found="rated speed")],
) -> Worked[float]:
    """Mean speed of a piston, by which engines of unlike size are compared.

    stroke: travel of the piston, in mm.
    speed: of the crankshaft, in rpm.
    Source: definition, v = 2·L·n.

    >>> piston_speed(stroke=90, speed=3000).value
    9.0
    """
    w = Working()
    w.given("L", stroke, "mm", meaning="stroke")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    mean = 2 * stroke / 1000 * speed / 60
    w.step("v", "2·L/1000·n/60", mean, "m/s", meaning="mean speed of the piston", answer="speed")
    return Worked(mean, w)
