from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import Length, Speed, larger


@a_sum(example="--inner-radius '4 3/4 in' --outer-radius '5 5/8 in' --inner-speed 580 "
       "--outer-speed 620 --radius '5 in'")  # fmt: skip
def speed_between(
    *,
    inner_radius: Length,
    outer_radius: Length,
    inner_speed: Speed,
    outer_speed: Speed,
    radius: Annotated[float, Of("mm", above=0)],
) -> Worked[float]:
    """Speed of a spring governor at a radius between two that are known.

    inner_radius: of the balls when in, in mm.
    outer_radius: of the balls when out, in mm.
    inner_speed: of the spindle with the balls in, in rpm.
    outer_speed: of the spindle with the balls out, in rpm.
    radius: at which the speed is wanted, in mm.
    Raises NotPossible where the outer radius is not the larger, or the force would be a push.
    Source: Bevan, Theory of Machines, example 3, page 466; the force of a spring is a
    straight line.

    >>> round(speed_between(inner_radius=3, outer_radius=4.5, inner_speed=300, outer_speed=318,
    ...     radius=3.5).value, 2)
    307.84
    """
    larger("outer radius", outer_radius, "the inner", inner_radius, "mm")
    w = Working()
    w.given("r_1", inner_radius, "mm", meaning="inner radius")
    w.given("r_2", outer_radius, "mm", meaning="outer radius")
    w.given("n_1", inner_speed, "rpm", meaning="inner speed")
    w.given("n_2", outer_speed, "rpm", meaning="outer speed")
    w.given("r", radius, "mm", meaning="radius between")
    low = w.step("f_1", "n_1²·r_1", inner_speed**2 * inner_radius, "", meaning="as the pull")
    high = w.step("f_2", "n_2²·r_2", outer_speed**2 * outer_radius, "", meaning="as the pull")
    share = (radius - inner_radius) / (outer_radius - inner_radius)
    pull = low + (high - low) * share
    w.step("f", "f_1 + (f_2 − f_1)·(r − r_1)/(r_2 − r_1)", pull, "", meaning="straight between")
    if not inner_radius <= radius <= outer_radius:
        w.caution(f"radius {radius:g} mm lies outside the two that are known: this extrapolates.")
    if pull <= 0:
        raise NotPossible(f"radius {radius:g} mm", "is where the spring is slack", "look again")
    speed = sqrt(pull / radius)
    w.step("n", "√(f/r)", speed, "rpm", meaning="speed there", answer="speed")
    return Worked(speed, w)
