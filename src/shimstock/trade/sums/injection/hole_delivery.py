from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Cycle, Density, Pressure, Speed, turns
from shimstock.trade.sums.injection._jet import (
    Coefficient,
    Degrees,
    Holes,
    Pressures,
    jet,
    open_for,
)


@a_sum(
    example="--diameter '0.3 mm' --holes 4 --speed 975 --degrees 22 --pressure '1900 psi' "
    "--against '450 psi' --coefficient 0.7",
    cautions=(BOOK_FIRST, HIGH_PRESSURE_FUEL),
)
def hole_delivery(
    *,
    diameter: Annotated[float, Of("mm", above=0)],
    speed: Speed,
    degrees: Degrees,
    pressure: Pressure,
    against: Pressure,
    coefficient: Coefficient,
    holes: Holes = 1,
    density: Density = DIESEL,
    cycle: Cycle = "four-stroke",
    power: Annotated[float, Of("kW", above=0)] | None = None,
    end_pressure: Pressure | None = None,
    end_against: Pressure | None = None,
) -> Worked[float]:
    """Fuel that the holes of one injector pass at each stroke, and in an hour.

    diameter: of each hole, in mm.
    speed: of the crankshaft, in rpm.
    degrees: of the crankshaft that the injection lasts, in deg.
    pressure: of the fuel, at the start where it changes, in bar.
    against: pressure in the cylinder, at the start where it changes, in bar.
    coefficient: of discharge, from the source that is followed, no unit.
    holes: of the injector, all alike, a count.
    density: of the fuel, else that of a middling diesel, in g/cc.
    cycle: whether the cylinder is fed every second turn or every turn, no unit.
    power: of this one cylinder, where its consumption is wanted, in kW.
    end_pressure: of the fuel at the end of injection, where it changes, in bar.
    end_against: pressure in the cylinder at the end of injection, where it changes, in bar.
    Raises NotPossible where the cylinder's pressure is not below the fuel's.
    Source: Rajput, Textbook of Internal Combustion Engines, example 12.5, q = A·v·t.

    >>> round(hole_delivery(diameter=0.47, speed=1800, degrees=32, pressure=118.2, against=31.38,
    ...     coefficient=0.9, density=0.86544).value, 2)
    65.53
    """
    w = Working()
    w.given("d", diameter, "mm", meaning="each hole")
    w.given("z_h", holes, "", meaning="holes")
    area = w.step("A", "π/4·d²·z_h", pi / 4 * diameter**2 * holes, "mm2", answer="area")
    time = open_for(w, degrees, speed)
    fast = jet(w, Pressures(pressure, against, end_pressure, end_against), density, coefficient)
    volume = w.step("q", "A·v·t", area * fast * time, "mm3", meaning="each stroke", answer="volume")
    i = turns(w, cycle)
    flow = w.step("m", "60·n/i·q·ρ/1000000", 60 * speed / i * volume * density / 1e6, "kg/h",
                  meaning="one cylinder", answer="fuel")  # fmt: skip
    if power is not None:
        w.given("P", power, "kW", meaning="one cylinder")
        w.step("b", "1000·m/P", 1000 * flow / power, "g/kWh", answer="consumption")
    return Worked(volume, w)
