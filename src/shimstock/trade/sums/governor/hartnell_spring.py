from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR, SPRING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import (
    Length,
    Mass,
    Speed,
    larger,
    pull,
    turning,
    within_swing,
)


@dataclass(frozen=True)
class Spring:
    """Spring force in N with the balls in and out, and its rate in N/mm."""

    inner: float
    outer: float
    rate: float


@dataclass(frozen=True)
class _Crank:
    mass: float
    leverage: float
    sleeve: float
    helping: float


@a_sum(
    example="--mass '5.5 lb' --inner-radius '4 3/4 in' --outer-radius '5 5/8 in' --inner-speed 580 "
    "--outer-speed 620 --ball-arm '4 3/4 in' --sleeve-arm '3 1/8 in'",
    cautions=(BOOK_FIRST, GOVERNOR, SPRING),
)
def hartnell_spring(
    *,
    mass: Mass,
    inner_radius: Length,
    outer_radius: Length,
    inner_speed: Speed,
    outer_speed: Speed,
    ball_arm: Length,
    sleeve_arm: Length,
    sleeve: Annotated[float, Of("kg", least=0)] = 0.0,
    helping: Annotated[float, Of("N/mm", least=0)] = 0.0,
) -> Worked[Spring]:
    """Spring of a bell-crank governor from two speeds: its force at both, and its rate.

    The arms are taken square to the spindle; the weight of the balls is left out, as in the books.

    mass: of one ball, in kg.
    inner_radius: of the balls when in, in mm.
    outer_radius: of the balls when out, in mm.
    inner_speed: of the spindle with the balls in, in rpm.
    outer_speed: of the spindle with the balls out, in rpm.
    ball_arm: of the bell crank to the ball, in mm.
    sleeve_arm: of the bell crank to the sleeve, in mm.
    sleeve: mass that rests on the sleeve, in kg.
    helping: rate of springs that join the two balls, all together, in N/mm.
    Raises NotPossible where the outer radius is not the larger, the arm cannot swing so far, or no
    spring that pushes could do it.
    Source: Khurmi and Gupta, Theory of Machines, chapter on governors, S = 2·F·x/y − M·g; with
    springs between the balls Bevan, Theory of Machines, example 4, page 468.

    >>> got = hartnell_spring(mass=2.5, inner_radius=120, outer_radius=142.5, inner_speed=290,
    ...     outer_speed=310, ball_arm=120, sleeve_arm=80).value
    >>> round(got.inner, 1), round(got.outer, 1), round(got.rate, 2)
    (830.0, 1126.3, 19.75)
    """
    larger("outer radius", outer_radius, "the inner", inner_radius, "mm")
    within_swing("radii", outer_radius - inner_radius, "ball arm", ball_arm)
    w = Working()
    w.given("m", mass, "kg", meaning="mass of a ball")
    w.given("x", ball_arm, "mm", meaning="arm to the ball")
    w.given("y", sleeve_arm, "mm", meaning="arm to the sleeve")
    w.given("M", sleeve, "kg", meaning="mass on the sleeve")
    w.given("k_b", helping, "N/mm", meaning="springs between the balls")
    crank = _Crank(mass, ball_arm / sleeve_arm, sleeve, helping)
    inner = _force(w, "_1", "inner", crank, inner_speed, inner_radius)
    outer = _force(w, "_2", "outer", crank, outer_speed, outer_radius)
    lift = (outer_radius - inner_radius) * sleeve_arm / ball_arm
    w.step("h", "(r_2 − r_1)·y/x", lift, "mm", meaning="lift of the sleeve", answer="lift")
    # A spring between the balls is stretched at both radii; only the difference counts.
    rate = (outer - inner) / lift - 4 * helping * crank.leverage**2
    w.step("k", "(S_2 − S_1)/h − 4·k_b·(x/y)²", rate, "N/mm", meaning="main spring", answer="rate")
    _must_push(crank, inner_speed, inner, outer_speed, rate)
    even = (2 * mass * (2 * pi * inner_speed / 60) ** 2 / 1000 - 4 * helping) * crank.leverage**2
    w.step("k_i", "(2·m·ω_1²/1000 − 4·k_b)·(x/y)²", even, "N/mm", answer="isochronous rate",
           meaning="a softer main spring is not stable")  # fmt: skip
    if outer_speed <= inner_speed:
        w.note("The balls go out at no higher speed: this governor is not stable.")
    return Worked(Spring(inner, outer, rate), w)


def _force(w: Working, mark: str, name: str, crank: _Crank, speed: float, radius: float) -> float:
    """What all springs together push on the sleeve at one speed."""
    w.given(f"r{mark}", radius, "mm", meaning=f"{name} radius")
    outwards = pull(w, mark, crank.mass, turning(w, mark, speed, f"{name} speed"), radius)
    force = 2 * outwards * crank.leverage - crank.sleeve * 9.80665
    shown = f"2·F{mark}·x/y − M·9.80665"
    return w.step(f"S{mark}", shown, force, "N", meaning="on the sleeve", answer=f"{name} force")


def _must_push(crank: _Crank, slow: float, inner: float, fast: float, rate: float) -> None:
    """Raises NotPossible where the spring would have to pull, or to push less when pressed."""
    if inner <= 0:
        rule = f"is more than the balls carry at {slow:g} rpm, even without a spring"
        raise NotPossible(f"sleeve {crank.sleeve:g} kg", rule, "look at mass, speed and arms")
    if rate <= 0:
        rule = "asks for a main spring that pushes less the more it is pressed"
        what = f"outer speed {fast:g} rpm"
        raise NotPossible(what, rule, "look at speeds, radii and the springs between the balls")
