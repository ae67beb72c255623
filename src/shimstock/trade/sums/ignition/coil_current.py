from dataclasses import dataclass
from math import exp
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SHOCK
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Filled:
    """Current in A, and its share in per cent of what it could come to."""

    current: float
    share: float


@a_sum(example="--voltage 6 --resistance 1.5 --time-constant '1.9 ms' --closed '4 ms'",
       cautions=(SHOCK,))  # fmt: skip
def coil_current(
    *,
    voltage: Annotated[float, Of("V", above=0, found="volts")],
    resistance: Annotated[float, Of("ohm", above=0)],
    time_constant: Annotated[float, Of("ms", above=0)],
    closed: Annotated[float, Of("ms", least=0)],
) -> Worked[Filled]:
    """Current in a coil after the points have been shut for so long.

    Less time at speed, a lower battery or a warmer coil each leave less for the spark.

    voltage: at the coil, in V.
    resistance: of the coil and its ballast, in ohm.
    time_constant: inductance over resistance, in ms.
    closed: how long the points are shut, in ms.
    Source: charging of an inductance, i = I·(1 − e^(−t/τ)).

    >>> got = coil_current(voltage=12, resistance=3, time_constant=1.9109, closed=4).value
    >>> round(got.share, 2)
    87.67
    """
    w = Working()
    w.given("U", voltage, "V", meaning="at the coil")
    w.given("R", resistance, "ohm", meaning="coil and ballast")
    w.given("τ", time_constant, "ms", meaning="time constant")
    w.given("t", closed, "ms", meaning="points shut")
    most = w.step("I", "U/R", voltage / resistance, "A", meaning="when full")
    share = 100 * (1 - exp(-closed / time_constant))
    w.step("q", "100·(1 − exp(−t/τ))", share, "%", meaning="of that reached", answer="share")
    current = w.step("i", "I·q/100", most * share / 100, "A", meaning="when the points open",
                     answer="current")  # fmt: skip
    return Worked(Filled(current, share), w)
