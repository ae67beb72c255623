"""Brixius' equations for a driven wheel on soil, as ASABE D497 has them."""

from math import exp, sqrt
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Soil = Literal["hard", "firm", "tilled", "soft", "measured"]
NUMBERS = {"hard": 80.0, "firm": 55.0, "tilled": 40.0, "soft": 20.0}
Number = Annotated[float, Of("", above=0)]


def ratios(number: float, slip: float) -> tuple[float, float, float, float]:
    """Gross traction, motion resistance, net traction, and tractive efficiency at a slip share."""
    gross = 0.88 * (1 - exp(-0.1 * number)) * (1 - exp(-7.5 * slip)) + 0.04
    resistance = 1 / number + 0.04 + 0.5 * slip / sqrt(number)
    net = gross - resistance
    return gross, resistance, net, (1 - slip) * net / gross


def mobility(w: Working, soil: Soil, number: float | None) -> float:
    """The mobility number of a soil, kept as B_n. Raises NotPossible where it is missing."""
    if soil != "measured":
        if number is not None:
            rule = "is given beside a soil that has one"
            raise NotPossible("the mobility number", rule, "leave one of them out")
        return w.given("B_n", NUMBERS[soil], "", meaning=f"mobility number, {soil} soil")
    if number is None:
        rule = "is missing for a measured soil"
        raise NotPossible("the mobility number", rule, "type --number; see mobility-number")
    return w.given("B_n", number, "", meaning="mobility number as measured")
