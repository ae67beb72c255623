"""Drills: number, letter, fraction and metric sizes, read and chosen."""

import re
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Annotated

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import Quantity
from shimstock.trade.numbers.typed_number import tidy
from shimstock.trade.sums.declare import Read
from shimstock.trade.sums.fasteners._amounts import parse_length

# ASME B94.11M, number 1 to 60 and letter A to Z, in ten-thousandths of an inch.
NUMBERS = (
    2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770,
    1730, 1695, 1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160,
    1130, 1110, 1100, 1065, 1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700,
    670, 635, 595, 550, 520, 465, 430, 420, 410, 400,
)  # fmt: skip
LETTERS = (
    2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950, 3020, 3160, 3230,
    3320, 3390, 3480, 3580, 3680, 3770, 3860, 3970, 4040, 4130,
)  # fmt: skip
EXAMPLES = ("No. 7", "F", "5/16", "8.5 mm")


@dataclass(frozen=True)
class Drill:
    """A drill by its name, and its diameter."""

    name: str
    size: Quantity


def _inch(name: str, size: float) -> Drill:
    return Drill(name, Quantity(size, "in", name, "in"))


NAMED = {
    **{f"no. {i}": _inch(f"No. {i}", size / 1e4) for i, size in enumerate(NUMBERS, start=1)},
    **{chr(97 + i): _inch(chr(65 + i), size / 1e4) for i, size in enumerate(LETTERS)},
}


def parse_drill(text: str) -> Drill:
    """Reads a drill: its number, letter, fraction of an inch, or size with a unit.

    Raises NotUnderstood.

    >>> parse_drill("#7").size.value, parse_drill("F").size.value, parse_drill("5/16").size.value
    (0.201, 0.257, 0.3125)
    """
    plain = tidy(text).lower()
    numbered = re.sub(r"^(#|no\.?|number) ?", "no. ", plain)
    found = NAMED.get(numbered) or NAMED.get(plain.removeprefix("letter "))
    if found is not None:
        return found
    if re.fullmatch(r"(\d{1,2}[ -])?\d{1,2}/\d{1,2}", plain, re.ASCII):
        plain += " in"
    try:
        return Drill(tidy(text), parse_length(plain))
    except NotUnderstood as error:
        raise NotUnderstood(text, f"is no drill: {error}".split(";")[0], EXAMPLES) from None


def nearest(hole: float, unit: str) -> Drill:
    """The drill nearest to a hole in `unit`, of the inch sets or the metric one; up where equal."""
    if unit == "mm":
        step = Fraction(1, 2) if hole > 32 else Fraction(1, 4)
        steps = (step, Fraction(1, 10)) if hole <= 14 else (step,)
        sizes = [n * each for each in steps for n in _around(hole, each)]
        return min(map(_metric, sizes), key=lambda drill: _off(drill, hole))
    parts = Fraction(1, 64) if hole <= 2 else Fraction(1, 32)
    fractions = [_inch(_fraction(n * parts), float(n * parts)) for n in _around(hole, parts)]
    return min([*NAMED.values(), *fractions], key=lambda drill: _off(drill, hole))


def _off(drill: Drill, hole: float) -> tuple[float, float]:
    """How far a drill is off, in its unit to a millionth; the larger of two first."""
    return round(abs(drill.size.value - hole), 6), -drill.size.value


def _around(hole: float, step: Fraction) -> tuple[int, ...]:
    below = floor(hole / step)
    return tuple(n for n in (below, below + 1) if n > 0)


def _metric(size: Fraction) -> Drill:
    name = f"{float(size):g} mm"
    return Drill(name, Quantity(float(size), "mm", name, "mm"))


def _fraction(size: Fraction) -> str:
    whole, rest = divmod(size, 1)
    if not rest:
        return f"{whole} in"  # a bare 1 could be either
    return " ".join(str(part) for part in (whole, rest) if part)


DrillText = Annotated[Drill, Read(parse_drill, "5/16")]
