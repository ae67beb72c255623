from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._fuel import HeatingValue


@a_sum(example="--consumption '0.46 lb/hp.h' --heating-value '18900 Btu/lb' "
       "--reference '19350 Btu/lb' --in lb/hp.h")  # fmt: skip
def consumption_by_heating_value(
    *,
    consumption: Annotated[float, Of("g/kWh", above=0)],
    heating_value: HeatingValue,
    reference: HeatingValue,
) -> Worked[float]:
    """Fuel for work that the same engine would take of a fuel with another heating value.

    consumption: as measured, in g/kWh.
    heating_value: of the fuel used; lower or higher, but the same kind as the other, in MJ/kg.
    reference: of the fuel that the result is wanted for, in MJ/kg.
    Source: equal heat for equal work, b_r = b·H/H_r; Kates, Diesel and High Compression Gas
    Engines, page 136.

    >>> round(consumption_by_heating_value(consumption=280, heating_value=44, reference=45).value)
    274
    """
    w = Working()
    w.given("b", consumption, "g/kWh", meaning="as measured")
    w.given("H", heating_value, "MJ/kg", meaning="heating value of the fuel used")
    w.given("H_r", reference, "MJ/kg", meaning="heating value of the other fuel")
    scaled = consumption * heating_value / reference
    w.step("b_r", "b·H/H_r", scaled, "g/kWh", meaning="of the other fuel", answer="consumption")
    return Worked(scaled, w)
