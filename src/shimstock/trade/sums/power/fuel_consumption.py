from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._fuel import ByVolume, ByWeight, Density, fuel_weight


@a_sum(example="--power '38 hp' --volume '2.6 gal/h' --density '0.84 g/cc' --in lb/hp.h")
def fuel_consumption(
    *,
    power: Annotated[float, Of("kW", above=0)],
    fuel: ByWeight | None = None,
    volume: ByVolume | None = None,
    density: Density | None = None,
) -> Worked[float]:
    """Fuel that an engine takes for its work: weight for each kilowatt-hour or horsepower-hour.

    power: power on the brake, in kW.
    fuel: fuel taken, by weight, in kg/h.
    volume: fuel taken, by volume, with the density, in l/h.
    density: of the fuel, where it is given by volume, in g/cc.
    Raises NotPossible where the fuel is given twice or not at all, or a volume without density.
    Source: definition of the specific consumption; Rajput, Textbook of Internal Combustion
    Engines, example 17.46.

    >>> round(fuel_consumption(power=15.05, fuel=4).value, 1)
    265.8
    """
    w = Working()
    w.given("P", power, "kW", meaning="power on the brake")
    m = fuel_weight(w, fuel, volume, density)
    specific = 1000 * m / power
    w.step("b", "1000·m/P", specific, "g/kWh", meaning="fuel for work", answer="consumption")
    return Worked(specific, w)
