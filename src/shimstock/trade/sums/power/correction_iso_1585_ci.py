from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.power._air import Humidity, Power, Pressure, Temperature
from shimstock.trade.sums.power._compression_ignition import (
    Air,
    Aspiration,
    Boost,
    Fuel,
    FuelPerLitre,
    FuelRate,
    Speed,
    Standard,
    correction,
)
from shimstock.trade.sums.power._cycle import Cycle, Displacement

EXPONENTS = {
    "natural": (1, 0.7),
    "turbo": (0.7, 1.2),
    "turbo air-cooled": (0.7, 1.2),
    "turbo liquid-cooled": (0.7, 0.7),
}
STANDARD = Standard("ISO 1585, compression ignition", EXPONENTS, least=0.2, from_q=37.2)


@a_sum(example="--pressure '29.1 inHg' --temperature '88 F' --humidity 60 --power '38 hp' "
       "--fuel '1.9 g/s' --displacement '5.7 l' --speed 975")  # fmt: skip
def correction_iso_1585_ci(
    *,
    pressure: Pressure,
    temperature: Temperature,
    humidity: Humidity | None = None,
    fuel_per_litre: FuelPerLitre | None = None,
    fuel: FuelRate | None = None,
    displacement: Displacement | None = None,
    speed: Speed | None = None,
    cycle: Cycle = "four-stroke",
    boost: Boost = 1,
    aspiration: Aspiration = "natural",
    power: Power | None = None,
) -> Worked[float]:
    """Power correction of a diesel engine to reference air by ISO 1585, compression ignition.

    UN R85 gives other exponents for a turbocharged engine and another least factor.

    pressure: barometer at the place; of the dry air alone where no humidity is given, in kPa.
    temperature: of the air that goes into the engine, in degC.
    humidity: relative, of that air, in %.
    fuel_per_litre: milligrams of fuel for each litre swept and cycle, no unit.
    fuel: fuel taken, with displacement and speed, where the former is not known, in g/s.
    displacement: swept volume of all cylinders, in l.
    speed: speed of the crankshaft, in rpm.
    cycle: four-stroke or two-stroke, no unit.
    boost: absolute pressure after the blower by that before it, no unit.
    aspiration: natural, or turbo without a cooler, with an air or with a liquid cooler, no unit.
    power: on the brake, to be corrected, in kW.
    Raises NotPossible where the fuel is given twice or not at all, or where the vapour would
    press harder than the barometer.
    Source: ISO 1585, compression-ignition engines, as two service manuals of industrial diesels
    quote it; vapour pressure by the Magnus formula, 17.62 and 243.12.

    >>> round(correction_iso_1585_ci(pressure=95, temperature=30, fuel_per_litre=45).value, 5)
    1.02571
    """
    w = Working()
    air = Air(pressure, temperature, humidity)
    taken = Fuel(fuel_per_litre, fuel, displacement, speed, cycle, boost)
    return Worked(correction(w, STANDARD, air, taken, aspiration, power), w)
