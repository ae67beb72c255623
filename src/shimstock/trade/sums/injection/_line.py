"""The fuel shut in between plunger and injector."""

from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Space = Annotated[float, Of("cc", least=0)]
PipeBore = Annotated[float, Of("mm", least=0)]
PipeLength = Annotated[float, Of("mm", least=0)]


def shut_in(w: Working, barrel: float, bore: float, length: float, injector: float) -> float:
    """Volume between plunger and injector in cc, kept as V.

    Raises NotPossible where there is none.
    """
    w.given("V_b", barrel, "cc", meaning="above the plunger")
    w.given("d_p", bore, "mm", meaning="bore of the pipe")
    w.given("l_p", length, "mm", meaning="length of the pipe")
    w.given("V_i", injector, "cc", meaning="in the injector")
    volume = barrel + pi / 4 * bore**2 * length / 1000 + injector
    if volume <= 0:
        rule = "leave no fuel between plunger and injector"
        raise NotPossible("barrel, pipe and injector", rule, "give at least one of their volumes")
    shown = "V_b + π/4·d_p²·l_p/1000 + V_i"
    return w.step("V", shown, volume, "cc", meaning="shut in", answer="shut in")
