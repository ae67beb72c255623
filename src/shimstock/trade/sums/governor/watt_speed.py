from dataclasses import dataclass
from math import cos, pi, radians, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import G, Length


@dataclass(frozen=True)
class Rise:
    """Speed in rpm, and by how much in per cent it is higher once the balls have risen."""

    speed: float
    growth: float


@a_sum(example="--arm '16 in' --angle 30 --rise '3/4 in'")
def watt_speed(
    *,
    arm: Length,
    angle: Annotated[float, Of("deg", least=0, below=90)],
    rise: Annotated[float, Of("mm", least=0)] = 0.0,
) -> Worked[Rise]:
    """Speed of a plain two-ball governor, and how much faster it turns when the balls rise.

    arm: from the pivot on the spindle to the centre of the ball, in mm.
    angle: of the arm from the spindle, in deg.
    rise: of the balls, in mm.
    Raises NotPossible where the balls would rise to the pivot.
    Source: B. K. Sarkar, Theory of Machines, illustration 7.1, page 196; n² = 900·g/(π²·h).

    >>> round(watt_speed(arm=400, angle=30, rise=20).value.growth, 3)
    3.018
    """
    w = Working()
    w.given("l", arm, "mm", meaning="arm")
    w.given("α", angle, "deg", meaning="from the spindle")
    w.given("b", rise, "mm", meaning="rise of the balls")
    low = w.step("h", "l·cos(α)", arm * cos(radians(angle)), "mm", meaning="height of the pivot")
    high = w.step("h'", "h − b", low - rise, "mm", meaning="after the rise")
    if high <= 0:
        raise NotPossible(f"rise {rise:g} mm", "takes the balls to the pivot", "look at its unit")
    speed = 30 / pi * sqrt(G * 1000 / low)
    w.step("n", "30/π·√(9806.65/h)", speed, "rpm", meaning="speed", answer="speed")
    growth = 100 * (sqrt(low / high) - 1)
    w.step("q", "100·(√(h/h') − 1)", growth, "%", meaning="faster after it", answer="growth")
    return Worked(Rise(speed, growth), w)
