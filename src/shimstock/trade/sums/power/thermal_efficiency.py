from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._fuel import ByVolume, ByWeight, Density, HeatingValue, fuel_weight


@a_sum(example="--power '38 hp' --fuel '18.1 lb/h' --heating-value '19300 Btu/lb'")
def thermal_efficiency(
    *,
    heating_value: HeatingValue,
    power: Annotated[float, Of("kW", above=0)] | None = None,
    fuel: ByWeight | None = None,
    volume: ByVolume | None = None,
    density: Density | None = None,
    consumption: Annotated[float, Of("g/kWh", above=0)] | None = None,
) -> Worked[float]:
    """Share of the fuel's heat that an engine turns into power.

    Give power and fuel, or the consumption for work alone.

    heating_value: heat of the fuel; say with the result whether lower or higher, in MJ/kg.
    power: brake power, or indicated power for the indicated efficiency, in kW.
    fuel: fuel taken, by weight, in kg/h.
    volume: fuel taken, by volume, with the density, in l/h.
    density: of the fuel, where it is given by volume, in g/cc.
    consumption: fuel for work, in the place of power and fuel, in g/kWh.
    Raises NotPossible where power and fuel or the consumption are given twice or not at all,
    where a density stands without the volume, and where more power than heat would come out.
    Source: definition of the thermal efficiency; Kates, Diesel and High Compression Gas Engines,
    pages 117 and 118.

    >>> round(thermal_efficiency(heating_value=44, power=15.05, fuel=4).value, 2)
    30.78
    """
    goes_with("density", density, "volume", volume)
    w = Working()
    w.given("H", heating_value, "MJ/kg", meaning="heating value")
    if consumption is not None:
        if (power, fuel, volume) != (None, None, None):
            rule = "are each enough alone"
            raise NotPossible("consumption, and power with fuel,", rule, "leave one out")
        w.given("b", consumption, "g/kWh", meaning="fuel for work")
        share, shown = 360000 / (consumption * heating_value), "360000/(b·H)"
    else:
        share, shown = _from_power(w, power, fuel_weight(w, fuel, volume, density), heating_value)
    if share > 100:
        rule = "would give more power than the fuel has heat"
        raise NotPossible("this fuel", rule, "look at power, fuel and heating value again")
    w.step("η", shown, share, "%", meaning="thermal efficiency", answer="efficiency")
    return Worked(share, w)


def _from_power(
    w: Working, power: float | None, fuel: float, heating_value: float
) -> tuple[float, str]:
    if power is None:
        raise NotPossible("power", "is needed with the fuel", "give it, or the consumption alone")
    w.given("P", power, "kW", meaning="power")
    heat = w.step("Q", "m·H/3.6", fuel * heating_value / 3.6, "kW", meaning="heat of the fuel")
    return 100 * power / heat, "100·P/Q"
