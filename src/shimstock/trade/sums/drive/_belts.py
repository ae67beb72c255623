"""Grip of a belt on its pulley."""

from math import exp, radians
from typing import Annotated

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Friction = Annotated[float, Of("", above=0, most=2, known=(0.1, 0.6))]
Wrap = Annotated[float, Of("deg", above=0, most=720, known=(90, 270))]
Tension = Annotated[float, Of("N", above=0, most=100_000)]
Turning = Annotated[float, Of("rpm", above=0)]


def grip(w: Working, friction: float, wrap: float) -> float:
    """Tight over slack tension, kept as q; μ and θ from here."""
    w.given("μ", friction, "", meaning="friction of the belt on the pulley")
    w.given("θ", wrap, "deg", meaning="wrap")
    return w.step("q", "e^(μ·θ·π/180)", exp(friction * radians(wrap)), "", meaning="tight to slack")
