from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR, SPRING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import Speed


@a_sum(example="--force '40 lbf' --speed 1240 --wanted 1200 --rate '80 lbf/in'",
       cautions=(BOOK_FIRST, GOVERNOR, SPRING))  # fmt: skip
def spring_for_speed(
    *,
    force: Annotated[float, Of("N", above=0)],
    speed: Speed,
    wanted: Speed,
    rate: Annotated[float, Of("N/mm", above=0)],
) -> Worked[float]:
    """Spring force and turn of its adjuster that bring a governed speed to another.

    The balls stand at the same radius at both speeds; a sleeve's weight counts into the force.

    force: of the spring now, in N.
    speed: governed now, in rpm.
    wanted: speed wanted, in rpm.
    rate: of the spring, in N/mm.
    Source: centrifugal force at one radius, S' = S·(n'/n)².

    >>> round(spring_for_speed(force=100, speed=1000, wanted=1100, rate=10).value, 1)
    121.0
    """
    w = Working()
    w.given("S", force, "N", meaning="spring now")
    w.given("n", speed, "rpm", meaning="speed now")
    w.given("n'", wanted, "rpm", meaning="speed wanted")
    w.given("k", rate, "N/mm", meaning="rate of the spring")
    needed = force * (wanted / speed) ** 2
    w.step("S'", "S·(n'/n)²", needed, "N", meaning="spring then", answer="force")
    stretch = (needed - force) / rate
    w.step("Δl", "(S' − S)/k", stretch, "mm", meaning="more stretch", answer="stretch")
    return Worked(needed, w)
