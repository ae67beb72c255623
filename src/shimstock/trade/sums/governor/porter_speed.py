from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import G, Length, Mass


@a_sum(example="--arm '12 in' --radius '8 in' --mass '15 lb' --sleeve '120 lb' "
       "--lower-offset '1 1/2 in'", cautions=(GOVERNOR,))  # fmt: skip
def porter_speed(
    *,
    arm: Length,
    radius: Length,
    mass: Mass,
    sleeve: Annotated[float, Of("kg", least=0)],
    lower_arm: Length | None = None,
    upper_offset: Annotated[float, Of("mm", least=0)] = 0.0,
    lower_offset: Annotated[float, Of("mm", least=0)] = 0.0,
) -> Worked[float]:
    """Speed of a governor whose balls lift a weighted sleeve, at one radius of the balls.

    arm: upper arm, from pivot to ball, in mm.
    radius: of the balls from the spindle, in mm.
    mass: of one ball, in kg.
    sleeve: mass of the central weight, in kg.
    lower_arm: from ball to sleeve, else as the upper, in mm.
    upper_offset: of the upper pivot from the spindle, in mm.
    lower_offset: of the lower pivot from the spindle, in mm.
    Raises NotPossible where the arms cannot reach that radius.
    Source: Khurmi and Gupta, Theory of Machines; Bevan, Theory of Machines, example 1, page 459.

    >>> round(porter_speed(arm=300, radius=200, mass=6, sleeve=18).value, 1)
    126.5
    """
    lower = arm if lower_arm is None else lower_arm
    w = Working()
    w.given("r", radius, "mm", meaning="radius of the balls")
    w.given("m", mass, "kg", meaning="mass of a ball")
    w.given("M", sleeve, "kg", meaning="mass of the sleeve")
    upwards = _lean(w, "α", "a", arm, radius, upper_offset, "upper")
    downwards = _lean(w, "β", "b", lower, radius, lower_offset, "lower")
    share = w.step("q", "t_β/t_α", downwards / upwards, "", meaning="lower lean to upper")
    omega = upwards * (mass + sleeve / 2 * (1 + share)) * G * 1000 / (mass * radius)
    w.step("u", "t_α·(m + M/2·(1 + q))·9806.65/(m·r)", omega, "", meaning="ω²")
    speed = 30 / pi * sqrt(omega)
    w.step("n", "30/π·√(u)", speed, "rpm", meaning="speed of the spindle", answer="speed")
    return Worked(speed, w)


def _lean(
    w: Working, angle: str, mark: str, arm: float, radius: float, offset: float, name: str
) -> float:
    """Tangent of an arm's lean from the spindle."""
    reach = radius - offset
    if not 0 < reach < arm:
        what = f"{name} arm {arm:g} mm with its pivot {offset:g} mm off the spindle"
        raise NotPossible(what, f"cannot stand at a radius of {radius:g} mm", "look at the units")
    w.given(f"l_{mark}", arm, "mm", meaning=f"{name} arm")
    w.given(f"c_{mark}", offset, "mm", meaning=f"{name} pivot off the spindle")
    lean = reach / sqrt(arm**2 - reach**2)
    return w.step(f"t_{angle}", f"(r − c_{mark})/√(l_{mark}² − (r − c_{mark})²)", lean, "")
