"""Works each shown line out again: the formula, and the numbers as they are printed."""

from collections.abc import Mapping
from typing import NamedTuple

from shimstock.trade.numbers import digits, formula

CLOSE = 1e-9  # share of the result that two ways of computing it may differ by
NOISE = 1e-13  # share of the largest number in the sum that a difference may lose


class Printed(NamedTuple):
    """A symbol's value, its unit and the digits it is printed with."""

    value: float
    unit: str
    significant: int

    @property
    def text(self) -> str:
        """The number as printed."""
        return digits.written(self.value, self.significant)

    @property
    def read(self) -> float:
        """The number that a reader sees."""
        return digits.read_back(self.text)

    @property
    def leeway(self) -> float:
        """How far the true value may be from the print; nothing where the print is exact."""
        if self.read == self.value:
            return 0.0
        return digits.half_last(self.value, self.significant)


def numbers(shown: str, known: Mapping[str, Printed]) -> str:
    """The formula with the printed numbers in place of the symbols."""
    used = {name: known[name].text for name in formula.symbols(shown) if name in known}
    return formula.with_numbers(shown, used, _degrees(known))


def complaints(symbol: str, shown: str, value: float, known: Mapping[str, Printed]) -> list[str]:
    """What is wrong with one step; nothing where formula, numbers and result agree."""
    used = {name: known[name] for name in formula.symbols(shown) if name in known}
    try:
        return _compared(symbol, shown, value, used)
    except formula.NotReadable as error:
        return [f"{symbol}: {error}"]


def _compared(symbol: str, shown: str, value: float, used: Mapping[str, Printed]) -> list[str]:
    angles = _degrees(used)
    exact = formula.evaluate(shown, {name: p.value for name, p in used.items()}, angles)
    largest = max([abs(value), abs(exact), *(abs(p.value) for p in used.values())])
    lost = CLOSE * abs(value) + NOISE * largest
    if not _near(exact, value, lost):
        got, code = digits.written(exact), digits.written(value)
        return [f"{symbol}: shown {shown} gives {got}, code gave {code}"]
    printed = formula.evaluate(numbers(shown, used), {})
    result = digits.read_back(digits.written(value))
    allowed = _leeway(shown, used, angles) + digits.half_last(value) + lost
    if not _near(printed, result, allowed):
        got, said = digits.written(printed, digits.GIVEN), digits.written(value)
        return [f"{symbol}: the printed numbers {numbers(shown, used)} give {got}, not {said}"]
    return []


def _near(a: float, b: float, allowed: float) -> bool:
    return a == b or abs(a - b) <= allowed


def _leeway(shown: str, used: Mapping[str, Printed], angles: frozenset[str]) -> float:
    """How far the printed digits of each symbol can carry the result, summed."""
    read = {name: p.read for name, p in used.items()}
    middle = formula.evaluate(shown, read, angles)
    total = 0.0
    for name, p in used.items():
        if p.leeway:
            total += max(_shift(shown, read, angles, name, s * p.leeway, middle) for s in (1, -1))
    return total


def _shift(
    shown: str,
    read: Mapping[str, float],
    angles: frozenset[str],
    name: str,
    by: float,
    middle: float,
) -> float:
    """How far the result moves when one printed number moves; 0 where it leaves the range."""
    try:
        return abs(formula.evaluate(shown, {**read, name: read[name] + by}, angles) - middle)
    except formula.NotReadable:
        return 0.0


def _degrees(known: Mapping[str, Printed]) -> frozenset[str]:
    return frozenset(name for name, p in known.items() if p.unit in ("deg", "°"))
