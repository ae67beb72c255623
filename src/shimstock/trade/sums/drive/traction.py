from dataclasses import dataclass
from math import exp, sqrt
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.drive._brixius import Number, Soil, mobility, ratios

Slip = Annotated[float, Of("%", above=0, below=100, known=(0.5, 30))]


@dataclass(frozen=True)
class Traction:
    """Gross traction, motion resistance and net traction for each unit of load; efficiency in %."""

    gross: float
    resistance: float
    net: float
    efficiency: float


@a_sum(example="--soil firm --slip 10", cautions=(ROLLOVER,))
def traction(*, soil: Soil, slip: Slip, number: Number | None = None) -> Worked[Traction]:
    """What a driven wheel pulls on a soil at a slip, for each unit of load, and how well.

    For bias-ply tyres on soil; an estimate, and no proof on the drawbar.

    soil: hard, firm, tilled or soft, or measured with its mobility number, no unit.
    slip: of the wheel, in %.
    number: mobility number of a measured soil, no unit.
    Raises NotPossible where the number is missing or one too many.
    Source: Brixius, ASABE D497, from memory.

    >>> round(traction(soil="firm", slip=10).value.net, 4)
    0.4375
    """
    w = Working()
    n = mobility(w, soil, number)
    w.given("s", slip, "%", meaning="slip")
    gross, resistance, net, efficiency = ratios(n, slip / 100)
    w.step("m_1", "1 − exp(−0.1·B_n)", 1 - exp(-0.1 * n), "")
    w.step("m_2", "1 − exp(−7.5·s/100)", 1 - exp(-7.5 * slip / 100), "")
    w.step("μ_g", "0.88·m_1·m_2 + 0.04", gross, "", answer="gross traction")
    rolling = 1 / n + 0.04 + 0.5 * slip / 100 / sqrt(n)
    w.step("ρ", "1/B_n + 0.04 + 0.5·s/100/√(B_n)", rolling, "", answer="motion resistance")
    w.step("μ", "μ_g − ρ", net, "", meaning="pull for each unit of load", answer="net traction")
    w.step("η", "100·(1 − s/100)·μ/μ_g", 100 * efficiency, "%", answer="tractive efficiency")
    if net <= 0:
        w.note("The wheel does not pull at all: it would have to be pushed.")
    return Worked(Traction(gross, resistance, net, 100 * efficiency), w)
