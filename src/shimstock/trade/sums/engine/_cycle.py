"""How often an engine fires, and the air at a height."""

from typing import Annotated, Literal

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Cycle = Literal["four-stroke", "two-stroke"]
Height = Annotated[float, Of("m", least=-500, most=11_000)]


def turns_between(w: Working, cycle: Cycle) -> int:
    """Turns of the crank between two firings of one cylinder, kept as i."""
    i = 2 if cycle == "four-stroke" else 1
    w.given("i", i, "", meaning=f"turns between firings of one cylinder, {cycle}")
    return i


def air_pressure(w: Working, height: float) -> float:
    """Pressure of the standard atmosphere at a height, in kPa, kept as p_h; H in m as h."""
    w.given("h", height, "m", meaning="height above the sea")
    pressure = 101.325 * float((1 - 0.0065 * height / 288.15) ** 5.25588)
    w.step("p_h", "101.325·(1 − 0.0065·h/288.15)^5.25588", pressure, "kPa", meaning="air there")
    return pressure
