from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._sae_j306 import THICK, WINTER


@a_sum(example="--thick-at '-28 degC'", cautions=(USED_OIL,))
def winter_gear_oil(*, thick_at: Annotated[float, Of("degC", least=-100, most=100)]) -> Worked[str]:
    """SAE J306 winter grade of a gear oil from the cold at which it gets too thick to be flung.

    The least viscosities at 100 °C of the winter grades are not looked at here.

    thick_at: temperature at which the oil has reached 150 000 cP, in degC.
    Source: SAE J306 of February 2019: 75W at −40, 80W at −26, 85W at −12 °C.

    >>> winter_gear_oil(thick_at=-28).value
    '80W'
    """
    w = Working()
    w.given("t", thick_at, "degC", meaning=f"reaches {THICK} cP")
    for name, coldest in WINTER:
        if thick_at <= coldest:
            w.given("t_m", coldest, "degC", meaning=f"{name} may reach it here at the warmest")
            w.step("Δ", "t_m − t", coldest - thick_at, "K", meaning="to spare", answer="to spare")
            w.tell("grade", name)
            return Worked(name, w)
    w.note("Too thick for any winter grade.")
    w.tell("grade", "none")
    return Worked("none", w)
