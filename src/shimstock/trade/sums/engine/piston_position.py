from dataclasses import dataclass
from math import cos, pi, radians, sin, sqrt
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._crank import Rod, Speed, Stroke, check_rod, drop


@dataclass(frozen=True)
class Piston:
    """How far down in mm, how fast in m/s, and its acceleration in m/s2, towards the crank."""

    drop: float
    speed: float
    acceleration: float


@a_sum(example="--stroke '6 3/4 in' --rod '13 1/2 in' --angle 28 --speed '975 rpm'",
       cautions=(BOOK_FIRST, CRANK))  # fmt: skip
def piston_position(
    *,
    stroke: Stroke,
    rod: Rod,
    angle: Annotated[float, Of("deg", least=-720, most=720)],
    speed: Speed = 0.0,
) -> Worked[Piston]:
    """How far a piston is below top dead centre at a crank angle, with its speed and acceleration.

    stroke: travel of the piston, in mm.
    rod: length of the connecting rod between its eyes, in mm.
    angle: of the crank from top dead centre, in deg; before it is negative.
    speed: of the crankshaft, in rpm; 0 where only the position is wanted.
    Raises NotPossible where the rod is not longer than the throw.
    Source: exact slider-crank geometry; Khurmi and Gupta, Theory of Machines, chapter 15.

    >>> got = piston_position(stroke=300, rod=600, angle=60, speed=450).value
    >>> round(got.drop, 3), round(got.speed, 4)
    (89.231, 6.9054)
    """
    check_rod(stroke, rod)
    w = Working()
    w.given("L", stroke, "mm", meaning="stroke")
    w.given("l", rod, "mm", meaning="connecting rod")
    w.given("θ", angle, "deg", meaning="crank angle from top dead centre")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    r = w.step("r", "L/2", stroke / 2, "mm", meaning="throw of the crank")
    turned = radians(angle)
    s = w.step("s", "√(l² − (r·sin(θ))²)", sqrt(rod**2 - (r * sin(turned)) ** 2), "mm")
    x = drop(r, rod, angle)
    w.step("x", "r·(1 − cos(θ)) + l − s", x, "mm", meaning="below the top", answer="drop")
    omega = w.step("ω", "2·π·n/60", 2 * pi * speed / 60, "rad/s")
    v = omega * r * (sin(turned) + r * sin(turned) * cos(turned) / s) / 1000
    w.step("v", "ω·r·(sin(θ) + r·sin(θ)·cos(θ)/s)/1000", v, "m/s", meaning="downwards",
           answer="speed")  # fmt: skip
    first = r * cos(turned) + r**2 * cos(2 * turned) / s
    second = (r**2 * sin(turned) * cos(turned)) ** 2 / s**3
    a = omega**2 * (first + second) / 1000
    w.step("b", "ω²·(r·cos(θ) + r²·cos(2·θ)/s + (r²·sin(θ)·cos(θ))²/s³)/1000", a, "m/s2",
           meaning="downwards", answer="acceleration")  # fmt: skip
    return Worked(Piston(x, v, a), w)
