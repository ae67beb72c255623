"""Copper wires: gauge and area, resistance, and the cable between battery and starter."""

import re
from math import log, pi
from typing import Annotated, NewType

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of, Read

Gauge = NewType("Gauge", int)
THICKEST, THINNEST = -3, 40
GAUGE = re.compile(r"(?:awg|no\.?|gauge)?\s*(?P<size>\d{1,2}(?:/0)?|0{1,4})\s*(?:awg|gauge)?")
WOULD_DO = ("2/0", "1", "14 AWG")


def parse_gauge(text: str) -> Gauge:
    """The number of an American wire gauge: 4/0 is −3, 1/0 is 0, 10 is 10.

    Raises NotUnderstood where the text names no gauge from 4/0 to 40.

    >>> parse_gauge("4/0"), parse_gauge("00"), parse_gauge("14 AWG")
    (-3, -1, 14)
    """
    found = GAUGE.fullmatch(text.strip().lower(), 0)
    if not found or not text.isascii():
        raise NotUnderstood(text, "is no American wire gauge", WOULD_DO)
    size = found["size"]
    if size.endswith("/0"):
        number = 1 - int(size[:-2])
    else:
        number = 1 - len(size) if set(size) == {"0"} else int(size)
    if size == "0/0" or not THICKEST <= number <= THINNEST:
        raise NotUnderstood(text, "is no gauge from 4/0 to 40", WOULD_DO)
    return Gauge(number)


def named(gauge: int) -> str:
    """The gauge as it is spoken of: 2/0, 1, 14."""
    return f"{1 - gauge}/0" if gauge < 1 else f"{gauge}"


AsGauge = Annotated[Gauge, Read(parse_gauge, "2/0")]
Area = Annotated[float, Of("mm2", above=0)]
Volts = Annotated[float, Of("V", above=0)]
Supply = Annotated[float, Of("V", above=0, found="volts")]
System = Annotated[float, Of("V", above=0, found="volts")]
Amperes = Annotated[float, Of("A", above=0)]
Run = Annotated[float, Of("m", above=0)]
Warmth = Annotated[float, Of("degC", least=-60, most=200)]


def diameter(w: Working, gauge: int) -> float:
    """The diameter of a solid wire in inches, kept as d."""
    w.given("n", gauge, "", meaning=f"gauge {named(gauge)} as a number")
    return w.step("d", "0.005·92^((36 − n)/39)", 0.005 * 92 ** ((36 - gauge) / 39), "in",
                  meaning="diameter of the copper", answer="diameter")  # fmt: skip


def area_of(w: Working, gauge: int | None, area: float | None) -> float:
    """The copper area in mm2, kept as A. Raises NotPossible unless exactly one is given."""
    if (gauge is None) == (area is None):
        raise NotPossible("the wire", "must be given by gauge or by area", "give one of the two")
    if area is not None:
        return w.given("A", area, "mm2", meaning="copper area")
    d = diameter(w, gauge or 0)
    return w.step("A", "π/4·(25.4·d)²", pi / 4 * (25.4 * d) ** 2, "mm2", meaning="copper area",
                  answer="area")  # fmt: skip


def resistivity(w: Working, temperature: float) -> float:
    """Resistance of a metre of copper of 1 mm² at its temperature, kept as ρ."""
    w.given("t", temperature, "degC", meaning="temperature of the copper")
    rho = 0.017241 * (1 + 0.00393 * (temperature - 20))
    return w.step("ρ", "0.017241·(1 + 0.00393·(t − 20))", rho, "",
                  meaning="ohm for a metre of 1 mm²")  # fmt: skip


def length(w: Working, out: float, back: float) -> float:
    """All the copper that the current runs through, kept as L."""
    w.given("L_1", out, "m", meaning="cable out")
    w.given("L_2", back, "m", meaning="cable back, 0 where the frame carries it")
    return w.step("L", "L_1 + L_2", out + back, "m", meaning="cable in all")


def nearest_gauge(diameter_in: float) -> float:
    """The gauge number that a diameter in inches would have, a fraction mostly."""
    return 36 - 39 * log(diameter_in / 0.005) / log(92)
