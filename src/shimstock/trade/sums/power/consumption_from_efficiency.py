from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._fuel import HeatingValue


@a_sum(example="--efficiency 32 --heating-value '18390 Btu/lb' --in lb/hp.h")
def consumption_from_efficiency(
    *, efficiency: Annotated[float, Of("%", above=0, most=100)], heating_value: HeatingValue
) -> Worked[float]:
    """Fuel for work of an engine that turns a share of the fuel's heat into power.

    efficiency: share of the heat that becomes power, in %.
    heating_value: heat of the fuel, of the same kind as the efficiency is for, in MJ/kg.
    Source: definition of the thermal efficiency; Kates, Diesel and High Compression Gas Engines,
    page 118.

    >>> round(consumption_from_efficiency(efficiency=30, heating_value=42.7).value, 1)
    281.0
    """
    w = Working()
    w.given("η", efficiency, "%", meaning="thermal efficiency")
    w.given("H", heating_value, "MJ/kg", meaning="heating value")
    specific = 360000 / (efficiency * heating_value)
    w.step("b", "360000/(η·H)", specific, "g/kWh", meaning="fuel for work", answer="consumption")
    return Worked(specific, w)
