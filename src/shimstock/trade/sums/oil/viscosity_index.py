from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--poor 400 --good 150 --index 80", cautions=(USED_OIL,))
def viscosity_index(
    *,
    poor: Annotated[float, Of("", above=0)],
    good: Annotated[float, Of("", above=0)],
    oil: Annotated[float, Of("", above=0)] | None = None,
    index: Annotated[float, Of("", least=-1000, most=100)] | None = None,
) -> Worked[float]:
    """Viscosity index of an oil from those of two reference oils, or the viscosity at an index.

    All three in the same unit, SUS or mm²/s, at the lower temperature, of oils that are equal at
    the higher one. Up to an index of 100.

    poor: viscosity of the reference oil of index 0, no unit.
    good: viscosity of the reference oil of index 100, no unit.
    oil: viscosity of the oil, no unit.
    index: viscosity index, where the oil's viscosity is wanted, no unit.
    Raises NotPossible where the reference oils are swapped, not exactly one of oil and index is
    given, or the oil's index comes out above 100.
    Source: VI = 100·(L − U)/(L − H), older form up to 100; A. Esposito, Fluid Power with
    Applications, example 2.14.

    >>> viscosity_index(poor=400, good=150, index=80).value
    200.0
    """
    if good >= poor:
        rule = f"must be less than poor, {poor:g}"
        raise NotPossible(f"good {good:g}", rule, "look whether the two are swapped")
    if (oil is None) == (index is None):
        raise NotPossible("oil and index", "must be one of the two", "give one, leave one out")
    w = Working()
    w.given("L", poor, "", meaning="reference oil of index 0")
    w.given("H", good, "", meaning="reference oil of index 100")
    spread = w.step("D", "L − H", poor - good, "")
    if index is not None:
        w.given("VI", index, "", meaning="viscosity index")
        u = w.step("U", "L − D·VI/100", poor - spread * index / 100, "", answer="viscosity")
        return Worked(u, w)
    assert oil is not None, "one of the two is given"
    if oil < good:
        rule = f"is thinner than the oil of index 100, {good:g}"
        raise NotPossible(f"oil {oil:g}", rule, "above 100 the index has another formula")
    w.given("U", oil, "", meaning="the oil")
    below = w.step("D_u", "L − U", poor - oil, "")
    return Worked(w.step("VI", "100·D_u/D", 100 * below / spread, "", answer="index"), w)
