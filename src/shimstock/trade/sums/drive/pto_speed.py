from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, HAND_CLEAR_OF_PTO
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--speed 975 --ratio 1.8", cautions=(HAND_CLEAR_OF_PTO, BOOK_FIRST))
def pto_speed(
    *,
    speed: Annotated[float, Of("rpm", least=0, found="rated speed")],
    ratio: Annotated[float, Of("", above=0)],
    standard: Annotated[float, Of("rpm", above=0)] = 540.0,
) -> Worked[float]:
    """Speed of the power take-off, and the engine speed at which it turns at its standard one.

    speed: of the engine, in rpm.
    ratio: turns of the engine for one of the power take-off, no unit.
    standard: speed it should turn at, 540 or 1000, in rpm.
    Source: geometry; ISO 500 for 540 and 1000 rpm, from memory.

    >>> round(pto_speed(speed=975, ratio=1.8).value, 1)
    541.7
    """
    w = Working()
    w.given("n", speed, "rpm", meaning="engine")
    w.given("i", ratio, "", meaning="turns of the engine for one")
    w.given("n_s", standard, "rpm", meaning="standard")
    now = w.step("n_p", "n/i", speed / ratio, "rpm", meaning="power take-off", answer="speed")
    w.step("n_e", "n_s·i", standard * ratio, "rpm", meaning="engine for it", answer="engine speed")
    return Worked(now, w)
