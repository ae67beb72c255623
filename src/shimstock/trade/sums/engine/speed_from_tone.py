from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between


@a_sum(example="--tone '32.5 Hz' --line 4", cautions=(RUNNING, EXHAUST))
def speed_from_tone(
    *,
    tone: Annotated[float, Of("per.s", above=0)],
    line: Annotated[int, Of("", least=1)],
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Speed of an engine from a tone of its exhaust and which line of the cycle it is.

    tone: frequency heard, in per.s.
    line: how many times the rate of the cycle it is, as firing-lines numbers them, a count.
    cycle: four-stroke or two-stroke, no unit.
    Source: Fourier series of the firings, f = k·n/(60·i).

    >>> speed_from_tone(tone=32.5, line=4).value
    975.0
    """
    w = Working()
    w.given("f", tone, "per.s", meaning="tone")
    w.given("k", line, "", meaning="line of the cycle")
    i = turns_between(w, cycle)
    speed = 60 * i * tone / line
    w.step("n", "60·i·f/k", speed, "rpm", meaning="speed of the crankshaft", answer="speed")
    return Worked(speed, w)
