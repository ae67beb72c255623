"""The air an engine breathed: its dry pressure, absolute temperature, and a standard's range."""

from math import exp
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

# No ground lies so high or so deep that air presses less or more; 990 mbar typed as kPa is caught.
Pressure = Annotated[float, Of("kPa", least=30, most=120)]
Temperature = Annotated[float, Of("degC", least=-60, most=100)]
Humidity = Annotated[float, Of("%", least=0, most=100)]
Power = Annotated[float, Of("kW", above=0)]

IN_RANGE = "inside the range"


def dry_pressure(
    w: Working,
    pressure: float,
    temperature: float,
    humidity: float | None,
    saturation: float | None = None,
) -> float:
    """The dry pressure, kept as p_d; t already stands in the working.

    saturation: full vapour pressure from a table, in the place of the Magnus formula.
    Raises NotPossible where the vapour would press harder than the barometer.
    """
    if humidity is None:
        w.note("No humidity is given: the pressure is taken as that of the dry air.")
        return w.given("p_d", pressure, "kPa", meaning="dry pressure")
    w.given("p", pressure, "kPa", meaning="barometer at the place")
    w.given("φ", humidity, "%", meaning="relative humidity")
    full = _full(w, temperature) if saturation is None else saturation
    if saturation is not None:
        w.given("p_s", saturation, "kPa", meaning="full vapour, from the table")
    vapour = w.step("p_v", "φ/100·p_s", humidity / 100 * full, "kPa", meaning="vapour in the air")
    if vapour >= pressure:
        rule = f"must be below the barometer, {pressure:g} kPa"
        would_do = "look at temperature and humidity again"
        raise NotPossible(f"vapour {vapour:.3g} kPa", rule, would_do)
    return w.step("p_d", "p − p_v", pressure - vapour, "kPa", meaning="dry pressure")


def _full(w: Working, temperature: float) -> float:
    full = 0.6112 * exp(17.62 * temperature / (243.12 + temperature))
    return w.step("p_s", "0.6112·e^(17.62·t/(243.12 + t))", full, "kPa",
                  meaning="full vapour (Magnus)")  # fmt: skip


def kelvin(w: Working, temperature: float) -> float:
    """The absolute temperature as these standards count it, 25 °C as 298 K."""
    return w.step("T", "t + 273", temperature + 273, "K", meaning="absolute temperature")


def corrected(w: Working, symbol: str, factor: float, power: float | None) -> None:
    """The power in reference air, where the power on the brake is known."""
    if power is not None:
        w.given("P", power, "kW", meaning="power on the brake")
        w.step("P_0", f"{symbol}·P", factor * power, "kW", meaning="in reference air",
               answer="corrected power")  # fmt: skip


def tell_range(w: Working, standard: str, *held: tuple[bool, str]) -> None:
    """Says whether the standard allows a result from this air, and what it asks where not."""
    broken = [rule for holds, rule in held if not holds]
    w.tell("standard", standard)
    if not broken:
        w.tell(IN_RANGE, "yes")
        return
    w.tell(IN_RANGE, f"no: {standard} asks for {', '.join(broken)}")
    w.note(f"Outside the range of {standard}: it asks for {', '.join(broken)}.")
