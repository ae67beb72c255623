"""Which diameter has which pitch in each series of threads."""

from fractions import Fraction
from functools import cache
from typing import NamedTuple

from shimstock.trade.sums.fasteners._forms import BA, CYCLE, ISO, UNIFIED, WHITWORTH, Form


class Row(NamedTuple):
    """One thread of a series: its name, size and pitch in `unit`, threads an inch where counted."""

    name: str
    series: str
    form: Form
    unit: str
    d: float
    pitch: float
    n: float | None


# ASME B1.1; sizes with # are number sizes of 0.060 in and 0.013 in more for each number.
UNC = (
    "#1-64 #2-56 #3-48 #4-40 #5-40 #6-32 #8-32 #10-24 #12-24 1/4-20 5/16-18 3/8-16 7/16-14 1/2-13 "
    "9/16-12 5/8-11 3/4-10 7/8-9 1-8 1_1/8-7 1_1/4-7 1_3/8-6 1_1/2-6 1_3/4-5 2-4.5"
)
UNF = (
    "#0-80 #1-72 #2-64 #3-56 #4-48 #5-44 #6-40 #8-36 #10-32 #12-28 1/4-28 5/16-24 3/8-24 7/16-20 "
    "1/2-20 9/16-18 5/8-18 3/4-16 7/8-14 1-12 1_1/8-12 1_1/4-12 1_3/8-12 1_1/2-12"
)
UNS = "1-14"  # the older fine thread of one inch
# BS 84
BSW = (
    "1/8-40 3/16-24 1/4-20 5/16-18 3/8-16 7/16-14 1/2-12 9/16-12 5/8-11 11/16-11 3/4-10 7/8-9 1-8 "
    "1_1/8-7 1_1/4-7 1_1/2-6 1_3/4-5 2-4.5"
)
BSF = (
    "3/16-32 7/32-28 1/4-26 5/16-22 3/8-20 7/16-18 1/2-16 9/16-16 5/8-14 11/16-14 3/4-12 7/8-11 "
    "1-10 1_1/8-9 1_1/4-9 1_3/8-8 1_1/2-8"
)
# BS 811
BSC = (
    "1/8-40 5/32-32 3/16-32 7/32-26 1/4-26 9/32-26 5/16-26 3/8-26 7/16-26 1/2-26 9/16-26 5/8-26 "
    "11/16-26 3/4-26"
)
# ISO 261 and 262
COARSE = (
    "1.6x0.35 2x0.4 2.5x0.45 3x0.5 3.5x0.6 4x0.7 5x0.8 6x1 7x1 8x1.25 10x1.5 12x1.75 14x2 16x2 "
    "18x2.5 20x2.5 22x2.5 24x3 27x3 30x3.5 33x3.5 36x4 39x4"
)
FINE = (
    "6x0.75 8x1 10x1 10x1.25 12x1.25 12x1.5 14x1.25 14x1.5 16x1.5 18x1.5 18x2 20x1.5 20x2 22x1.5 "
    "22x2 24x1.5 24x2 27x1.5 27x2 30x1.5 30x2 33x2 36x3 39x3"
)
# BS 93: number, diameter x pitch
ASSOCIATION = (
    "6.0x1.0 5.3x0.9 4.7x0.81 4.1x0.73 3.6x0.66 3.2x0.59 2.8x0.53 2.5x0.48 2.2x0.43 1.9x0.39 "
    "1.7x0.35"
)

INCH_SERIES = {
    "UNC": (UNC, UNIFIED), "UNF": (UNF, UNIFIED), "UNS": (UNS, UNIFIED),
    "BSW": (BSW, WHITWORTH), "BSF": (BSF, WHITWORTH), "BSC": (BSC, CYCLE),
}  # fmt: skip


def size_of(text: str) -> Fraction:
    """Diameter in in that a size such as 3/8, 1_1/4 or #10 means."""
    if text.startswith("#"):
        return Fraction("0.060") + int(text[1:]) * Fraction("0.013")
    return sum((Fraction(part) for part in text.split("_")), Fraction(0))


@cache
def rows() -> tuple[Row, ...]:
    """Every thread of every series."""
    inch = [_inch(series, text, form) for series, (texts, form) in INCH_SERIES.items()
            for text in texts.split()]  # fmt: skip
    iso = [_metric(text, "ISO coarse") for text in COARSE.split()]
    iso += [_metric(text, "ISO fine") for text in FINE.split()]
    ba = [_association(number, text) for number, text in enumerate(ASSOCIATION.split())]
    return (*inch, *iso, *ba)


def _inch(series: str, text: str, form: Form) -> Row:
    size, n = text.rsplit("-", 1)
    name = f"{text.replace('_', ' ')} {series}"
    return Row(name, series, form, "in", float(size_of(size)), 1 / float(n), float(n))


def _metric(text: str, series: str) -> Row:
    d, pitch = text.split("x")
    name = f"M{d}" if series == "ISO coarse" else f"M{d}×{pitch}"
    return Row(name, series, ISO, "mm", float(d), float(pitch), None)


def _association(number: int, text: str) -> Row:
    d, pitch = text.split("x")
    return Row(f"{number} BA", "BA", BA, "mm", float(d), float(pitch), None)
