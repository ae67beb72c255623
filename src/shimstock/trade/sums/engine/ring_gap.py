from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--bore '3 1/2 in'", cautions=(BOOK_FIRST, "A ring that butts when hot breaks."))
def ring_gap(
    *,
    bore: Annotated[Length, Of("length", above=0, found="bore")],
    least: Annotated[float, Of("", above=0)] = 0.0035,
    most: Annotated[float, Of("", above=0)] = 0.004,
    unit: str = "in",
) -> Worked[tuple[Length, Length]]:
    """Least and most end gap of a new piston ring by the rule of so much for each inch of bore.

    bore: diameter of the bore that the ring will run in, in `unit`.
    least: smallest gap for each unit of bore, no unit.
    most: largest gap for each unit of bore, no unit.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the shares are swapped.
    Source: common practice, no source: 0.0035 to 0.004 in for each inch of bore.

    >>> [round(gap, 5) for gap in ring_gap(bore=Length(3.5)).value]
    [0.01225, 0.014]
    """
    if least > most:
        raise NotPossible(f"least gap {least:g}", f"must not be above most, {most:g}", "swap them")
    w = Working()
    w.given("D", bore, unit, meaning="bore")
    w.given("k_1", least, "", meaning="least gap for each unit of bore")
    w.given("k_2", most, "", meaning="most gap for each unit of bore")
    low = w.step("g_min", "k_1·D", least * bore, unit, meaning="least gap", answer="least")
    high = w.step("g_max", "k_2·D", most * bore, unit, meaning="most gap", answer="most")
    return Worked((Length(low), Length(high)), w)
