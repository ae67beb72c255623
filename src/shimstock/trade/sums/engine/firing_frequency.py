from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between


@a_sum(example="--speed '975 rpm' --cylinders 2")
def firing_frequency(
    *,
    speed: Annotated[float, Of("rpm", least=0, found="rated speed")],
    cylinders: Annotated[int, Of("", least=1, found="cylinders")],
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """How many times a second an engine fires, one cylinder and all of them.

    speed: of the crankshaft, in rpm.
    cylinders: how many there are, a count.
    cycle: four-stroke or two-stroke, no unit.
    Source: geometry, f = n·z/(60·i).

    >>> round(firing_frequency(speed=2000, cylinders=8).value, 2)
    133.33
    """
    w = Working()
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    w.given("z", cylinders, "", meaning="cylinders")
    i = turns_between(w, cycle)
    one = w.step("f_1", "n/(60·i)", speed / (60 * i), "per.s", answer="one cylinder")
    every = w.step("f", "z·f_1", cylinders * one, "per.s", answer="all cylinders")
    return Worked(every, w)
