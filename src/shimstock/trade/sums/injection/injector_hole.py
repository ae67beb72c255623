from math import pi, sqrt

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Delivery, Density, Pressure, Speed
from shimstock.trade.sums.injection._jet import (
    Coefficient,
    Degrees,
    Holes,
    Pressures,
    jet,
    open_for,
)


@a_sum(
    example="--delivery '105 mm3' --speed 975 --degrees 28 --pressure '1900 psi' "
    "--against '450 psi' --coefficient 0.7 --holes 4",
    cautions=(BOOK_FIRST, HIGH_PRESSURE_FUEL),
)
def injector_hole(
    *,
    delivery: Delivery,
    speed: Speed,
    degrees: Degrees,
    pressure: Pressure,
    against: Pressure,
    coefficient: Coefficient,
    holes: Holes = 1,
    density: Density = DIESEL,
    end_pressure: Pressure | None = None,
    end_against: Pressure | None = None,
) -> Worked[float]:
    """Diameter of an injector's holes that let a delivery through in so many crank degrees.

    delivery: at each stroke, in mm3.
    speed: of the crankshaft, in rpm.
    degrees: of the crankshaft that the injection lasts, in deg.
    pressure: of the fuel, at the start where it changes, in bar.
    against: pressure in the cylinder, at the start where it changes, in bar.
    coefficient: of discharge, from the source that is followed, no unit.
    holes: of the injector, all alike, a count.
    density: of the fuel, else that of a middling diesel, in g/cc.
    end_pressure: of the fuel at the end of injection, where it changes, in bar.
    end_against: pressure in the cylinder at the end of injection, where it changes, in bar.
    Raises NotPossible where the cylinder's pressure is not below the fuel's.
    Source: Rajput, Textbook of Internal Combustion Engines, examples 12.2 and 12.6, A = q/(t·v).

    >>> round(injector_hole(delivery=261.65, speed=1500, degrees=30, pressure=160, against=40,
    ...     coefficient=0.9, density=0.85).value, 3)
    0.813
    """
    w = Working()
    w.given("q", delivery, "mm3", meaning="each stroke")
    time = open_for(w, degrees, speed)
    fast = jet(w, Pressures(pressure, against, end_pressure, end_against), density, coefficient)
    # Cubic millimetres a millisecond and metres a second leave square millimetres.
    area = w.step("A", "q/(t·v)", delivery / (time * fast), "mm2", meaning="all holes",
                  answer="area")  # fmt: skip
    w.given("z_h", holes, "", meaning="holes")
    across = w.step("d", "√(4·A/(π·z_h))", sqrt(4 * area / (pi * holes)), "mm", meaning="each hole",
                    answer="diameter")  # fmt: skip
    return Worked(across, w)
