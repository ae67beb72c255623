from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._plausible_work import FuelKind, tell_plausible


@a_sum(example="--consumption '0.46 lb/hp.h' --gallon '6.994 lb/gal' --kind diesel")
def work_from_consumption(
    *,
    consumption: Annotated[float, Of("lb/hp.h", above=0)],
    gallon: Annotated[float, Of("lb/gal", least=3, most=10)],
    kind: FuelKind | None = None,
) -> Worked[float]:
    """Work from a US gallon of fuel whose consumption by weight is known.

    In a row of any test report the two multiplied give the weight of the gallon, which shows a
    wrong digit.

    consumption: fuel for work, by weight, in lb/hp.h.
    gallon: weight of a US gallon of the fuel, in lb/gal.
    kind: kind of fuel, to see whether official tests ever saw the like, no unit.
    Source: identity, (hp.h/gal)·(lb/hp.h) = lb/gal.

    >>> round(work_from_consumption(consumption=0.46, gallon=6.994).value, 2)
    15.2
    """
    w = Working()
    w.given("b", consumption, "lb/hp.h", meaning="fuel for work")
    w.given("ρ", gallon, "lb/gal", meaning="weight of a gallon")
    work = w.step("a", "ρ/b", gallon / consumption, "hp.h/gal", meaning="work from a gallon",
                  answer="work")  # fmt: skip
    tell_plausible(w, work, kind)
    return Worked(work, w)
