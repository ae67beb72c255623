from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._air import (
    Power,
    Pressure,
    Temperature,
    dry_pressure,
    kelvin,
)


@a_sum(example="--pressure '87 kPa' --temperature '45 C' --humidity 80 --power '38 hp'")
def correction_iso_3046(
    *,
    pressure: Pressure,
    temperature: Temperature,
    humidity: Annotated[float, Of("%", least=0, most=100)],
    efficiency: Annotated[float, Of("%", above=0, most=100)] = 80,
    saturation: Annotated[float, Of("kPa", above=0)] | None = None,
    power: Power | None = None,
    consumption: Annotated[float, Of("g/kWh", above=0)] | None = None,
) -> Worked[float]:
    """Power and consumption of a diesel without blower at a place, from reference, by ISO 3046-1.

    Goes from reference (100 kPa, 25 °C, 30 % humidity) to the place; the other corrections go
    from the place to reference.

    pressure: barometer at the place, in kPa.
    temperature: of the air that goes into the engine, in degC.
    humidity: relative, of that air, in %.
    efficiency: mechanical efficiency; 80 where the maker declares none, in %.
    saturation: full vapour pressure at that temperature, from the standard's table, in kPa.
    power: at reference, in kW.
    consumption: fuel for work at reference, in g/kWh.
    Raises NotPossible where the vapour would press harder than the barometer or no power is left.
    Source: ISO 3046-1, diesel without blower limited by excess air: a 1, m 1, n 0.75, from memory;
    without the standard's table the vapour pressure is by the Magnus formula, 17.62 and 243.12.

    >>> round(correction_iso_3046(pressure=87, temperature=45, humidity=80).value, 3)
    0.721
    """
    w = Working()
    w.given("t", temperature, "degC", meaning="air temperature")
    dry = dry_pressure(w, pressure, temperature, humidity, saturation)
    absolute = kelvin(w, temperature)
    w.step("p_r", "100 − 0.3·3.17", 100 - 0.3 * 3.17, "kPa", meaning="dry pressure at reference")
    k = dry / (100 - 0.3 * 3.17) * (298 / absolute) ** 0.75
    w.step("k", "p_d/p_r·(298/T)^0.75", k, "", meaning="indicated power", answer="indicated factor")
    w.given("η", efficiency, "%", meaning="mechanical efficiency")
    alpha = k - 0.7 * (1 - k) * (100 / efficiency - 1)
    if alpha <= 0:
        rule = "would leave no power"
        raise NotPossible("this air with this efficiency", rule, "look at both again")
    w.step("α", "k − 0.7·(1 − k)·(100/η − 1)", alpha, "", meaning="power", answer="power factor")
    beta = w.step("β", "k/α", k / alpha, "", meaning="consumption", answer="consumption factor")
    if power is not None:
        w.given("P_r", power, "kW", meaning="at reference")
        w.step("P", "α·P_r", alpha * power, "kW", meaning="at the place", answer="power")
    if consumption is not None:
        w.given("b_r", consumption, "g/kWh", meaning="at reference")
        w.step("b", "β·b_r", beta * consumption, "g/kWh", answer="consumption")
    w.tell("standard", "ISO 3046-1, diesel without blower")
    return Worked(alpha, w)
