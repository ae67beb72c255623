"""The share of a paint that stays on the metal."""

from typing import Annotated

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Solids = Annotated[float, Of("%", least=1, most=100)]
Film = Annotated[float, Of("um", above=0)]
Thinner = Annotated[float, Of("%", least=0, most=1000)]
Loss = Annotated[float, Of("%", least=0, most=99)]


def thinned(w: Working, solids: float, thinner: float) -> float:
    """Solids by volume of the paint as it goes on, in %."""
    w.given("VS", solids, "%", meaning="solids by volume in the tin")
    if thinner == 0:
        return w.step("VS_t", "VS", solids, "%", meaning="as it goes on")
    w.given("q", thinner, "%", meaning="thinner for each hundred of paint")
    return w.step("VS_t", "VS/(1 + q/100)", solids / (1 + thinner / 100), "%",
                  meaning="as it goes on")  # fmt: skip
