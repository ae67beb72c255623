from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--time '1.2 ms' --speed '1650 rpm'")
def degrees_in_time(
    *,
    time: Annotated[float, Of("ms", least=0)],
    speed: Annotated[float, Of("rpm", least=0, found="rated speed")],
) -> Worked[float]:
    """Crank degrees that go by in a time: what a late spark or a long pipe costs at speed.

    time: of the delay, in ms.
    speed: of the crankshaft, in rpm.
    Source: geometry, α = 6·n·t.

    >>> degrees_in_time(time=1, speed=1000).value
    6.0
    """
    w = Working()
    w.given("t", time, "ms", meaning="delay")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    angle = 6 * speed * time / 1000
    w.step("α", "6·n·t/1000", angle, "deg", meaning="of the crank", answer="angle")
    return Worked(angle, w)
