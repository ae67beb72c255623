"""Zones of the ISO system as people write them, H7 or s6, and where they lie."""

import re
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Read
from shimstock.trade.sums.fits._iso286_tables import FINE, GRADES, LOWER, MAIN, UPPER

ZONE = re.compile(r"(js|JS|[A-Za-z])(\d{1,2})", re.ASCII)
LETTERS = ("js", *UPPER, *LOWER)
GRADES_HELD = range(5, 12)
LARGEST = 500  # mm, the end of the tables


@dataclass(frozen=True)
class Zone:
    """Where a size may lie: the letter of its deviation, a capital for a hole, and its grade."""

    letter: str
    grade: int

    @property
    def hole(self) -> bool:
        """Whether it is the zone of a hole."""
        return self.letter.isupper()

    @property
    def name(self) -> str:
        """As it is written."""
        return f"{self.letter}{self.grade}"


def parse_zone(text: str) -> Zone:
    """Reads a zone such as H7, js6 or s6. Raises NotUnderstood.

    >>> parse_zone("s6")
    Zone(letter='s', grade=6)
    """
    match = ZONE.fullmatch(text.strip())
    if match and match[1].lower() in LETTERS and int(match[2]) in GRADES_HELD:
        return Zone(match[1], int(match[2]))
    raise NotUnderstood(
        text,
        f"is no zone held here: letters {', '.join(LETTERS)} (capitals for holes) with grades "
        f"{GRADES_HELD[0]} to {GRADES_HELD[-1]}",
        ("H7", "s6"),
    )


ZoneText = Annotated[Zone, Read(parse_zone, "H7")]


def zone_limits(w: Working, size: float, zone: Zone, largest: str, smallest: str) -> Range:
    """Limits of a zone in mm, from D, which stands in the working; both named as results."""
    it = "IT_h" if zone.hole else "IT_s"
    tolerance = w.given(it, _entry(GRADES[zone.grade], size), "um", meaning=f"grade {zone.grade}")
    top, bottom = ("ES", "EI") if zone.hole else ("es", "ei")
    if zone.letter.lower() == "js":
        upper = w.step(top, f"{it}/2", tolerance / 2, "um")
        lower = w.step(bottom, f"−{it}/2", -tolerance / 2, "um")
    else:
        upper, lower = (_hole if zone.hole else _shaft)(w, zone, size, tolerance)
    part, what = ("H", "hole") if zone.hole else ("S", "shaft")
    high = w.step(f"{part}_max", f"D + {top}/1000", size + upper / 1000, "mm",
                  meaning=f"largest {what} {zone.name}", answer=largest)  # fmt: skip
    low = w.step(f"{part}_min", f"D + {bottom}/1000", size + lower / 1000, "mm",
                 meaning=f"smallest {what} {zone.name}", answer=smallest)  # fmt: skip
    return Range(low, high, "mm", f"{size:g} {zone.name}")


def _shaft(w: Working, zone: Zone, size: float, tol: float) -> tuple[float, float]:
    """Upper and lower deviation of a shaft, in micrometres."""
    letter = zone.letter
    if letter in UPPER:
        upper = w.given("es", _entry(UPPER[letter], size), "um", meaning=f"letter {letter}")
        return upper, w.step("ei", "es − IT_s", upper - tol, "um")
    lower = w.given("ei", _lower(letter, zone.grade, size), "um", meaning=f"letter {letter}")
    return w.step("es", "ei + IT_s", lower + tol, "um"), lower


def _hole(w: Working, zone: Zone, size: float, tol: float) -> tuple[float, float]:
    """Upper and lower deviation of a hole, in micrometres: the shaft's, turned over."""
    small = zone.letter.lower()
    meaning = f"deviation of a shaft {small}"
    if small in UPPER:
        es = w.given("es_0", _entry(UPPER[small], size), "um", meaning=meaning)
        lower = w.step("EI", "−es_0", -es, "um")
        return w.step("ES", "EI + IT_h", lower + tol, "um"), lower
    if small == "n" and zone.grade > 8 and size > 3:
        upper = w.given("ES", 0, "um", meaning="letter N above grade 8")
        return upper, w.step("EI", "ES − IT_h", upper - tol, "um")
    # Up to grade 8 a K hole follows the shaft k of the fine grades, which is not 0.
    fine = small == "k" and zone.grade <= 8
    below = _entry(LOWER["k"], size) if fine else _lower(small, zone.grade, size)
    ei = w.given("ei_0", below, "um", meaning=meaning)
    delta = w.given("Δ", _delta(small, zone.grade, size), "um", meaning="finer grade of the hole")
    upper = w.step("ES", "Δ − ei_0", delta - ei, "um")
    return upper, w.step("EI", "ES − IT_h", upper - tol, "um")


def _lower(letter: str, grade: int, size: float) -> int:
    return 0 if letter == "k" and grade > 7 else _entry(LOWER[letter], size)


def _delta(letter: str, grade: int, size: float) -> int:
    """What a close hole gets back, so that it fits like the next finer shaft (ITn − ITn−1)."""
    closest = 8 if letter in ("k", "m", "n") else 7
    if size <= 3 or grade > closest:
        return 0
    if letter == "m" and grade == 6 and 250 < size <= 315:
        return 11  # the one entry of table 3 that does not follow the rule
    return _entry(GRADES[grade], size) - _entry(GRADES[grade - 1], size)


def _entry(row: tuple[int, ...], size: float) -> int:
    """The entry of a table row for a size in mm, above 0 and up to 500."""
    ends = FINE if len(row) == len(FINE) else MAIN
    return row[next(i for i, end in enumerate(ends) if size <= end)]
