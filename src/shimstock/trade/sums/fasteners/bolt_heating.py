from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT, SOLVENT_HEAT
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--stretch '0.012 in' --grip '5 in' --expansion '6.5 uin/in.F'",
    cautions=(HEAT, SOLVENT_HEAT, "Heat takes the temper out of a hardened bolt."),
)
def bolt_heating(
    *,
    stretch: Annotated[float, Of("length", above=0)],
    grip: Annotated[float, Of("length", above=0)],
    expansion: Annotated[float, Of("um/m.K", above=0, known=(8, 25))] = 11.7,
    unit: str = "mm",
) -> Worked[float]:
    """Warming that lengthens a bolt by the stretch it is to have, so that its nut turns freely.

    stretch: stretch that is wanted, in `unit`.
    grip: length of the bolt that is warmed, in `unit`.
    expansion: expansion of its metal, 11.7 for steel, in um/m.K.
    unit: unit of the lengths, mm or in.
    Source: T. H. Wentzell, Machine Design, example 6.3: ΔT = δ/(α·L).

    >>> round(bolt_heating(stretch=0.3, grip=125).value, 1)
    205.1
    """
    w, unit = Working(), coherent(unit).length
    w.given("δ", stretch, unit, meaning="stretch")
    w.given("L", grip, unit, meaning="grip")
    w.given("α", expansion, "um/m.K", meaning="expansion")
    warming = stretch / (expansion / 1e6 * grip)
    w.step("ΔT", "δ/(α/10⁶·L)", warming, "K", meaning="above the parts", answer="warming")
    return Worked(warming, w)
