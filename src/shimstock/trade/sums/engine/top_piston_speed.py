from math import cos, pi, radians, sin, sqrt
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._crank import Rod, Stroke, check_rod

HALVINGS = 60


@a_sum(example="--stroke '6 3/4 in' --rod '13 1/2 in' --speed '975 rpm'")
def top_piston_speed(
    *, stroke: Stroke, rod: Rod, speed: Annotated[float, Of("rpm", above=0, found="rated speed")]
) -> Worked[float]:
    """Highest speed a piston reaches in its stroke, and the crank angle at which it does.

    stroke: travel of the piston, in mm.
    rod: length of the connecting rod between its eyes, in mm.
    speed: of the crankshaft, in rpm.
    Raises NotPossible where the rod is not longer than the throw.
    Source: exact slider-crank geometry; Khurmi and Gupta, Theory of Machines, example 15.3.

    >>> round(top_piston_speed(stroke=600, rod=1000, speed=200).value, 4)
    6.5617
    """
    check_rod(stroke, rod)
    w = Working()
    w.given("L", stroke, "mm", meaning="stroke")
    w.given("l", rod, "mm", meaning="connecting rod")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    r = w.step("r", "L/2", stroke / 2, "mm", meaning="throw of the crank")
    found = _fastest(r, rod)
    w.given("θ_0", found, "deg", meaning="angle at which the acceleration is nothing, by halving")
    w.step("θ", "θ_0", found, "deg", meaning="after top dead centre", answer="angle")
    turned = radians(found)
    s = w.step("s", "√(l² − (r·sin(θ))²)", sqrt(rod**2 - (r * sin(turned)) ** 2), "mm")
    v = 2 * pi * speed / 60 * r * (sin(turned) + r * sin(turned) * cos(turned) / s) / 1000
    w.step("v", "2·π·n/60·r·(sin(θ) + r·sin(θ)·cos(θ)/s)/1000", v, "m/s", answer="speed")
    return Worked(v, w)


def _fastest(throw: float, rod: float) -> float:
    """The angle in deg at which the piston no longer gains speed, between 0 and 90."""
    share = throw / rod
    low, high = 0.0, pi / 2
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        s = sqrt(1 - (share * sin(middle)) ** 2)
        gain = cos(middle) + share * cos(2 * middle) / s
        gain += share**3 * (sin(middle) * cos(middle)) ** 2 / s**3
        low, high = (middle, high) if gain > 0 else (low, middle)
    return low * 180 / pi
