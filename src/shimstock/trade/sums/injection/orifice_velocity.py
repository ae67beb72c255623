from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Density, Pressure
from shimstock.trade.sums.injection._jet import Coefficient, Pressures, jet


@a_sum(
    example="--pressure '1900 psi' --against '450 psi' --coefficient 0.9",
    cautions=(HIGH_PRESSURE_FUEL,),
)
def orifice_velocity(
    *,
    pressure: Pressure,
    against: Pressure,
    coefficient: Coefficient,
    density: Density = DIESEL,
    end_pressure: Pressure | None = None,
    end_against: Pressure | None = None,
) -> Worked[float]:
    """Speed at which fuel leaves the hole of an injector.

    pressure: of the fuel, at the start where it changes, in bar.
    against: pressure in the cylinder, at the start where it changes, in bar.
    coefficient: of velocity or discharge, from the source that is followed, no unit.
    density: of the fuel, else that of a middling diesel, in g/cc.
    end_pressure: of the fuel at the end of injection, where it changes, in bar.
    end_against: pressure in the cylinder at the end of injection, where it changes, in bar.
    Raises NotPossible where the cylinder's pressure is not below the fuel's.
    Source: Rajput, Textbook of Internal Combustion Engines, example 12.2, v = C·√(2·Δp/ρ).

    >>> round(orifice_velocity(pressure=160, against=40, coefficient=0.9, density=0.85).value, 2)
    151.23
    """
    w = Working()
    at = Pressures(pressure, against, end_pressure, end_against)
    return Worked(jet(w, at, density, coefficient), w)
