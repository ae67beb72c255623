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

STANDARD = "ISO 1585 and UN R85, spark ignition"


@a_sum(example="--pressure '29.1 inHg' --temperature '88 F' --humidity 60 --power '38 hp'")
def correction_iso_1585_si(
    *,
    pressure: Pressure,
    temperature: Temperature,
    humidity: Humidity | None = None,
    power: Power | None = None,
) -> Worked[float]:
    """Power correction of a spark-ignition engine to reference air by ISO 1585 and UN R85.

    Reference air is 99 kPa dry and 298 K, which the standard counts as 25 °C.

    pressure: barometer at the place; of the dry air alone where no humidity is given, in kPa.
    temperature: of the air that goes into the engine, in degC.
    humidity: relative, of that air, in %.
    power: on the brake, to be corrected, in kW.
    Raises NotPossible where the vapour would press harder than the barometer.
    Source: ISO 1585 and UN Regulation 85, spark-ignition engines, from memory; vapour pressure by
    the Magnus formula, 17.62 and 243.12.

    >>> round(correction_iso_1585_si(pressure=95, temperature=30).value, 5)
    1.06128
    """
    w = Working()
    w.given("t", temperature, "degC", meaning="air temperature")
    dry = dry_pressure(w, pressure, temperature, humidity)
    absolute = kelvin(w, temperature)
    factor: float = (99 / dry) ** 1.2 * (absolute / 298) ** 0.6
    w.step("α", "(99/p_d)^1.2·(T/298)^0.6", factor, "", meaning="correction", answer="correction")
    corrected(w, "α", factor, power)
    tell_range(
        w,
        STANDARD,
        (15 <= temperature <= 35, "air of 15 to 35 °C"),
        (80 <= dry <= 110, "80 to 110 kPa dry"),
        (0.93 <= factor <= 1.07, "a correction of 0.93 to 1.07"),
    )
    return Worked(factor, w)
