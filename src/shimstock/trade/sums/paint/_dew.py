"""Dew point by the Magnus formula, for the sums that need it."""

from math import log
from typing import Annotated

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Air = Annotated[float, Of("degC", least=-80, most=100, known=(-45, 60))]
Humidity = Annotated[float, Of("%", least=1, most=100)]


def dew(w: Working, air: float, humidity: float) -> float:
    """Temperature at which the air's damp settles, in degC; its steps go into the working."""
    w.given("T", air, "degC", meaning="air temperature")
    w.given("RH", humidity, "%", meaning="relative humidity")
    g = log(humidity / 100) + 17.62 * air / (243.12 + air)
    w.step("g", "ln(RH/100) + 17.62·T/(243.12 + T)", g, "")
    point = 243.12 * g / (17.62 - g)
    return w.step("T_d", "243.12·g/(17.62 − g)", point, "degC", answer="dew point")
