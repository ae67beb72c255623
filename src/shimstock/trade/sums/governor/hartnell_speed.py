from dataclasses import dataclass
from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR, SPRING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import (
    Length,
    Mass,
    Speed,
    pull,
    turning,
    within_swing,
)


@dataclass(frozen=True)
class Lifted:
    """Spring force in N before the lift, and the speed in rpm after it."""

    force: float
    speed: float


@a_sum(
    example="--mass '5.5 lb' --radius '4 3/4 in' --speed 580 --ball-arm '4 3/4 in' "
    "--sleeve-arm '3 1/8 in' --rate '465 lbf/in' --lift '9/16 in'",
    cautions=(BOOK_FIRST, GOVERNOR, SPRING),
)
def hartnell_speed(
    *,
    mass: Mass,
    radius: Length,
    speed: Speed,
    ball_arm: Length,
    sleeve_arm: Length,
    rate: Annotated[float, Of("N/mm", least=0)],
    lift: Annotated[float, Of("mm")],
    sleeve: Annotated[float, Of("kg", least=0)] = 0.0,
    helping: Annotated[float, Of("N/mm", least=0)] = 0.0,
) -> Worked[Lifted]:
    """Speed of a bell-crank governor after its sleeve has lifted, from the rate of its spring.

    mass: of one ball, in kg.
    radius: of the balls before the lift, in mm.
    speed: of the spindle before the lift, in rpm.
    ball_arm: of the bell crank to the ball, in mm.
    sleeve_arm: of the bell crank to the sleeve, in mm.
    rate: of the main spring, in N/mm.
    lift: of the sleeve, in mm; negative where it sinks.
    sleeve: mass that rests on the sleeve, in kg.
    helping: rate of springs that join the two balls, all together, in N/mm.
    Raises NotPossible where the balls would pass the spindle, an arm cannot swing so far, or the
    spring goes slack.
    Source: B. K. Sarkar, Theory of Machines, illustration 7.7, page 203.

    >>> got = hartnell_speed(mass=3, radius=120, speed=320, ball_arm=120, sleeve_arm=80, rate=20,
    ...     lift=15).value
    >>> round(got.speed, 2)
    327.97
    """
    within_swing("sleeve before and after", lift, "sleeve arm", sleeve_arm)
    w = Working()
    w.given("m", mass, "kg", meaning="mass of a ball")
    w.given("x", ball_arm, "mm", meaning="arm to the ball")
    w.given("y", sleeve_arm, "mm", meaning="arm to the sleeve")
    w.given("M", sleeve, "kg", meaning="mass on the sleeve")
    stiff = _together(w, rate, helping, ball_arm / sleeve_arm)
    w.given("h", lift, "mm", meaning="lift of the sleeve")
    w.given("r_1", radius, "mm", meaning="radius before")
    before = pull(w, "_1", mass, turning(w, "_1", speed, "speed before"), radius)
    weight = sleeve * 9.80665
    force = 2 * before * ball_arm / sleeve_arm - weight
    if force <= 0:
        rule = f"is more than the balls carry at {speed:g} rpm, even without a spring"
        raise NotPossible(f"sleeve {sleeve:g} kg", rule, "look at mass, speed and arms")
    w.step("S_1", "2·F_1·x/y − M·9.80665", force, "N", meaning="springs before", answer="force")
    out = radius + lift * ball_arm / sleeve_arm
    w.step("r_2", "r_1 + h·x/y", out, "mm", meaning="radius after", answer="radius")
    after = (force + stiff * lift + weight) * sleeve_arm / ball_arm / 2
    w.step("F_2", "(S_1 + k_s·h + M·9.80665)·y/x/2", after, "N", meaning="pull of one ball after")
    if out <= 0 or force + stiff * lift < 0:
        rule = "takes the balls past the spindle or leaves the spring slack"
        raise NotPossible(f"lift {lift:g} mm", rule, "look at its sign")
    faster = 60 / (2 * pi) * sqrt(after * 1000 / (mass * out))
    w.step("n_2", "60/(2·π)·√(F_2·1000/(m·r_2))", faster, "rpm", meaning="speed after",
           answer="speed")  # fmt: skip
    if (faster - speed) * lift < 0:
        w.note("The balls go out at a lower speed: this governor is not stable.")
    return Worked(Lifted(force, faster), w)


def _together(w: Working, rate: float, helping: float, leverage: float) -> float:
    """Rate of all springs as the sleeve feels it, kept as k_s; x and y already there."""
    w.given("k", rate, "N/mm", meaning="rate of the main spring")
    w.given("k_b", helping, "N/mm", meaning="springs between the balls")
    both = rate + 4 * helping * leverage**2
    return w.step("k_s", "k + 4·k_b·(x/y)²", both, "N/mm", meaning="both, at the sleeve")
