from math import log
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SHOCK
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--share 90 --after '4.4 ms'", cautions=(SHOCK,))
def coil_time_constant(
    *,
    share: Annotated[float, Of("%", above=0, below=100)],
    after: Annotated[float, Of("ms", above=0)],
) -> Worked[float]:
    """Time constant of a coil from the share of its full current that it has after a time.

    share: of the full current, in %.
    after: how long the points were shut, in ms.
    Source: charging of an inductance, τ = −t/ln(1 − i/I).

    >>> round(coil_time_constant(share=90, after=4.4).value, 4)
    1.9109
    """
    w = Working()
    w.given("q", share, "%", meaning="of the full current")
    w.given("t", after, "ms", meaning="points shut")
    constant = -after / log(1 - share / 100)
    w.step("τ", "−t/ln(1 − q/100)", constant, "ms", meaning="time constant",
           answer="time constant")  # fmt: skip
    return Worked(constant, w)
