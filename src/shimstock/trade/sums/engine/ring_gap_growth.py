from math import pi
from typing import Annotated

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--wear '0.010 in'")
def ring_gap_growth(*, wear: Annotated[Length, Of("length")], unit: str = "in") -> Worked[Length]:
    """How much wider a ring's gap stands in a bore that has worn.

    wear: growth of the bore in diameter, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: geometry, the circumference grows by π for each unit of diameter.

    >>> round(ring_gap_growth(wear=Length(0.010)).value, 4)
    0.0314
    """
    w = Working()
    w.given("ΔD", wear, unit, meaning="wear of the bore in diameter")
    growth = w.step("Δg", "π·ΔD", pi * wear, unit, meaning="gap grows by", answer="growth")
    return Worked(Length(growth), w)
