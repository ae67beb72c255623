"""Fuel an engine took, by weight or by volume with its density."""

from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

ByWeight = Annotated[float, Of("kg/h", above=0)]
ByVolume = Annotated[float, Of("l/h", above=0)]
# Lighter than any motor fuel or heavier than water is a slip of the units.
Density = Annotated[float, Of("g/cc", least=0.4, most=1.1)]
HeatingValue = Annotated[float, Of("MJ/kg", above=0, most=150)]


def fuel_weight(
    w: Working, fuel: float | None, volume: float | None, density: float | None
) -> float:
    """The fuel in kg/h, kept as m. Raises NotPossible where it is given twice or not at all."""
    if fuel is not None:
        if volume is not None:
            raise NotPossible("fuel and volume", "are each enough alone", "leave one out")
        return w.given("m", fuel, "kg/h", meaning="fuel by weight")
    if volume is None:
        raise NotPossible("fuel", "must be given by weight or by volume", "give one of the two")
    if density is None:
        rule = "says no weight without the density of the fuel"
        raise NotPossible(f"volume {volume:g} l/h", rule, "give the density, or the weight")
    w.given("q", volume, "l/h", meaning="fuel by volume")
    w.given("ρ", density, "g/cc", meaning="density of the fuel")
    return w.step("m", "q·ρ", volume * density, "kg/h", meaning="fuel by weight")
