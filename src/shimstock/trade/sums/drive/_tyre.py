"""Tyre sizes in inches, as they are moulded on old tyres."""

import re
from dataclasses import dataclass

from shimstock.trade.numbers.not_understood import NotUnderstood

EXAMPLE = "13.6-28"
SIZE = re.compile(r"(\d{1,2}(?:\.\d{1,2})?)\s*(?:-|x|R)\s*(\d{1,2}(?:\.5)?)", re.ASCII | re.I)


@dataclass(frozen=True)
class Tyre:
    """Section width and rim diameter of a tyre, both in inches, and its name."""

    section: float
    rim: float
    name: str

    def __str__(self) -> str:
        return self.name


def read_tyre(typed: str) -> Tyre:
    """A tyre by its size, such as 13.6-28: section width and rim in inches. Raises NotUnderstood.

    >>> read_tyre("13.6-28").rim
    28.0
    """
    found = SIZE.fullmatch(typed.strip())
    if not found:
        wrong = "is no tyre size: section and rim in inches"
        raise NotUnderstood(typed, wrong, (EXAMPLE, "6.00-16"))
    section, rim = float(found[1]), float(found[2])
    if not 2 <= section <= 50 or not 4 <= rim <= 60:
        raise NotUnderstood(typed, "is a size that no tractor has", (EXAMPLE, "6.00-16"))
    return Tyre(section, rim, typed.strip())
