from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COOLANT
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--system '14 l' --by-weight 40", cautions=(COOLANT,))
def glycol_volume(
    *,
    system: Annotated[float, Of("l", above=0, found="coolant capacity")],
    by_weight: Annotated[float, Of("%", above=0, most=100)],
    gravity: Annotated[float, Of("sg", above=0, most=3)] = 1.1155,
) -> Worked[float]:
    """Volume of glycol in a system for a share that is said by weight.

    system: what radiator, block and hoses hold, in l.
    by_weight: share of glycol by weight, in %.
    gravity: specific gravity of the glycol, in sg.
    Source: V_g = V/(1 + SG·(1 − P)/P), from a page that quotes the ASHRAE Handbook, Fundamentals,
    1993.

    >>> round(glycol_volume(system=1000, by_weight=30).value, 1)
    277.6
    """
    w = Working()
    w.given("V", system, "l", meaning="the system holds")
    w.given("SG", gravity, "sg", meaning="specific gravity of the glycol")
    w.given("p", by_weight, "%", meaning="glycol by weight")
    share = w.step("P", "p/100", by_weight / 100, "")
    volume = system / (1 + gravity * (1 - share) / share)
    w.step("V_g", "V/(1 + SG·(1 − P)/P)", volume, "l", answer="glycol")
    w.step("V_w", "V − V_g", system - volume, "l", answer="water")
    return Worked(volume, w)
