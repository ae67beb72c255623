from math import sqrt

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.power._air import (
    Humidity,
    Power,
    Pressure,
    Temperature,
    corrected,
    dry_pressure,
    kelvin,
    tell_range,
)

STANDARD = "SAE J1349 (June 1990)"


@a_sum(example="--pressure '29.1 inHg' --temperature '88 F' --humidity 60 --power '38 hp'")
def correction_sae_j1349(
    *,
    pressure: Pressure,
    temperature: Temperature,
    humidity: Humidity | None = None,
    power: Power | None = None,
) -> Worked[float]:
    """Power correction of a spark-ignition engine to reference air by SAE J1349 of June 1990.

    Reference air is 99 kPa dry and 25 °C. A mechanical efficiency of 85 per cent is built in.

    pressure: barometer at the place; of the dry air alone where no humidity is given, in kPa.
    temperature: of the air that goes into the engine, in degC.
    humidity: relative, of that air, in %.
    power: on the brake, to be corrected, in kW.
    Raises NotPossible where the vapour would press harder than the barometer.
    Source: SAE J1349 (June 1990), spark ignition, as several pages quote it; its bound of 7 per
    cent from memory; vapour pressure by the Magnus formula, 17.62 and 243.12.

    >>> round(correction_sae_j1349(pressure=95, temperature=35).value, 5)
    1.07015
    """
    w = Working()
    w.given("t", temperature, "degC", meaning="air temperature")
    dry = dry_pressure(w, pressure, temperature, humidity)
    absolute = kelvin(w, temperature)
    factor = 1.18 * (99 / dry) * sqrt(absolute / 298) - 0.18
    w.step("c_f", "1.18·(99/p_d)·√(T/298) − 0.18", factor, "", meaning="correction",
           answer="correction")  # fmt: skip
    corrected(w, "c_f", factor, power)
    tell_range(w, STANDARD, (0.93 <= factor <= 1.07, "a correction of 0.93 to 1.07"))
    return Worked(factor, w)
