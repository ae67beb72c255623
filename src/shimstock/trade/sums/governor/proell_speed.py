from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import G, Length, Mass


@a_sum(example="--arm '10 in' --extension '4 in' --radius '6 in' --mass '11 lb' --sleeve '88 lb'",
       cautions=(GOVERNOR,))  # fmt: skip
def proell_speed(
    *,
    arm: Length,
    extension: Annotated[float, Of("mm", least=0)],
    radius: Length,
    mass: Mass,
    sleeve: Annotated[float, Of("kg", least=0)],
) -> Worked[float]:
    """Speed of a weighted governor whose balls stand on arms carried on beyond the joint.

    Equal arms pivoted on the spindle, with the extension upright at this radius.

    arm: from pivot to joint, upper and lower alike, in mm.
    extension: from the joint up to the ball, in mm.
    radius: of joint and ball from the spindle, in mm.
    mass: of one ball, in kg.
    sleeve: mass of the central weight, in kg.
    Raises NotPossible where the arm cannot reach the radius.
    Source: B. K. Sarkar, Theory of Machines, illustration 7.10, page 206.

    >>> round(proell_speed(arm=250, extension=100, radius=150, mass=5, sleeve=40).value, 1)
    163.8
    """
    if radius >= arm:
        rule = f"must be less than the arm, {arm:g} mm"
        raise NotPossible(f"radius {radius:g} mm", rule, "look whether the two are swapped")
    w = Working()
    w.given("l", arm, "mm", meaning="arm")
    w.given("e", extension, "mm", meaning="extension")
    w.given("r", radius, "mm", meaning="radius")
    w.given("m", mass, "kg", meaning="mass of a ball")
    w.given("M", sleeve, "kg", meaning="mass of the sleeve")
    h = w.step("h", "√(l² − r²)", sqrt(arm**2 - radius**2), "mm", meaning="height")
    share = w.step("q", "h/(h + e)", h / (h + extension), "", meaning="leverage of the extension")
    speed = 30 / pi * sqrt(G * 1000 / h * share * (mass + sleeve) / mass)
    w.step("n", "30/π·√(9806.65/h·q·(m + M)/m)", speed, "rpm", answer="speed")
    return Worked(speed, w)
