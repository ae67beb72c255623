from math import exp, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._air import Humidity

STANDARD = "older basis, 60 °F and 29.92 inHg dry"


@a_sum(example="--pressure '29.1 inHg' --temperature '88 F' --humidity 60 --power '38 hp'")
def correction_older_60f(
    *,
    pressure: Annotated[float, Of("inHg", least=9, most=36)],
    temperature: Annotated[float, Of("degF", least=-76, most=212)],
    humidity: Humidity | None = None,
    vapour: Annotated[float, Of("inHg", least=0)] | None = None,
    power: Annotated[float, Of("hp", above=0)] | None = None,
) -> Worked[float]:
    """Power correction of a spark-ignition engine to the older basis, 60 °F and 29.92 inHg dry.

    Horsepower of old books and test reports mostly stands on this basis; it lies about 4 per cent
    above that of SAE J1349. Say the basis with the power.

    pressure: barometer at the place; of the dry air alone where neither humidity nor vapour is
    given, in inHg.
    temperature: of the air that goes into the engine, in degF.
    humidity: relative, of that air, in %.
    vapour: vapour pressure in the air, in the place of the humidity, in inHg.
    power: on the brake, to be corrected, in hp.
    Raises NotPossible where humidity and vapour are both given, or press harder than the barometer.
    Source: older 60 °F basis, 29.92/p·√((t + 459.7)/519.7), as a mailing list of engine builders
    gives it (1995); vapour pressure by the Magnus formula, 17.62 and 243.12.

    >>> round(correction_older_60f(pressure=29.5, temperature=80, vapour=0.5).value, 5)
    1.05139
    """
    w = Working()
    w.given("t", temperature, "degF", meaning="air temperature")
    dry = _dry(w, pressure, temperature, humidity, vapour)
    factor = 29.92 / dry * sqrt((temperature + 459.7) / 519.7)
    w.step("c", "29.92/p_d·√((t + 459.7)/519.7)", factor, "", meaning="correction",
           answer="correction")  # fmt: skip
    if power is not None:
        w.given("P", power, "hp", meaning="power on the brake")
        w.step("P_0", "c·P", factor * power, "hp", meaning="on the older basis",
               answer="corrected power")  # fmt: skip
    w.tell("standard", STANDARD)
    return Worked(factor, w)


def _dry(
    w: Working,
    pressure: float,
    temperature: float,
    humidity: float | None,
    vapour: float | None,
) -> float:
    if humidity is not None and vapour is not None:
        raise NotPossible("humidity and vapour", "are each enough alone", "leave one out")
    if humidity is None and vapour is None:
        w.note("Neither humidity nor vapour is given: the pressure is taken as of the dry air.")
        return w.given("p_d", pressure, "inHg", meaning="dry pressure")
    w.given("p", pressure, "inHg", meaning="barometer at the place")
    p_v = _vapour(w, temperature, humidity or 0) if vapour is None else vapour
    if vapour is not None:
        w.given("p_v", vapour, "inHg", meaning="vapour in the air")
    if p_v >= pressure:
        rule = f"must be below the barometer, {pressure:g} inHg"
        raise NotPossible(f"vapour {p_v:.3g} inHg", rule, "look at temperature and humidity again")
    return w.step("p_d", "p − p_v", pressure - p_v, "inHg", meaning="dry pressure")


def _vapour(w: Working, temperature: float, humidity: float) -> float:
    w.given("φ", humidity, "%", meaning="relative humidity")
    celsius = w.step("t_C", "(t − 32)/1.8", (temperature - 32) / 1.8, "degC")
    full = 0.6112 / 3.386389 * exp(17.62 * celsius / (243.12 + celsius))
    w.step("p_s", "0.6112/3.386389·e^(17.62·t_C/(243.12 + t_C))", full, "inHg",
           meaning="full vapour (Magnus)")  # fmt: skip
    return w.step("p_v", "φ/100·p_s", humidity / 100 * full, "inHg", meaning="vapour in the air")
