"""What lies in the shim drawer, as people write it: 0.003x4, 0.005x2 in."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.sums.declare import Read

EXAMPLES = ("0.003x4, 0.005x2 in", "0.10 mm; 0.15 mm x 2")
SHIM = re.compile(r"(?P<size>[^x×*]+?)\s*(?:[x×*]\s*(?P<count>\d{1,6})\s*(?P<unit>[^\d]*))?")


@dataclass(frozen=True)
class Shims:
    """Shims of one thickness: the thickness, its unit, "" where none was said, and how many."""

    size: float
    unit: str
    count: int

    def size_in(self, unit: str) -> float:
        """The thickness in a unit; a thickness without one is in that unit already."""
        return convert(self.size, self.unit, unit) if self.unit else self.size


def parse_drawer(text: str) -> tuple[Shims, ...]:
    """Reads thicknesses and how many there are of each; a unit at the end is that of all.

    Raises NotUnderstood.

    >>> [(each.size, each.unit, each.count) for each in parse_drawer("0.003x4, 0.005 in")]
    [(0.003, 'in', 4), (0.005, 'in', 1)]
    """
    parted = text.split(";" if ";" in text else ",")
    shims = [_shims(text, part.strip()) for part in parted if part.strip()]
    if not shims:
        raise NotUnderstood(text, "names no shim", EXAMPLES)
    last = shims[-1].unit
    return tuple(Shims(each.size, each.unit or last, each.count) for each in shims)


def merged(drawer: Sequence[Shims], unit: str) -> dict[float, int]:
    """How many there are of each thickness in a unit, thicknesses named twice together."""
    counts: dict[float, int] = {}
    for each in drawer:
        size = each.size_in(unit)
        counts[size] = counts.get(size, 0) + each.count
    return counts


def _shims(text: str, part: str) -> Shims:
    """One thickness with how many there are; the unit stands behind either."""
    match = SHIM.fullmatch(part)
    if not match:
        wrong = f"says {part}, which is no thickness and how many there are of it"
        raise NotUnderstood(text, wrong, EXAMPLES)
    size = match["size"] + (f" {match['unit']}" if match["unit"] else "")
    unit = find(split_number(tidy(size))[1])
    value = parse(size, unit=unit.name if unit else "mm", what="shim").value
    if unit is not None and unit.kind != "length":
        raise NotUnderstood(text, f"says {part}, which is no length", EXAMPLES)
    if value <= 0:
        raise NotUnderstood(text, f"says {part}; a shim has a thickness above 0", EXAMPLES)
    return Shims(value, unit.name if unit else "", int(match["count"] or 1))


DrawerText = Annotated[tuple[Shims, ...], Read(parse_drawer, EXAMPLES[0])]
