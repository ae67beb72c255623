"""What the book's figures span: how far a reading can be from them before it must be a slip."""

from __future__ import annotations

from shimstock.trade.machine.book import Figure
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import convert, kind

SMALL = 0.1
"""Inches: below this a length is a clearance or a lash, and ten times its limit is possible."""


def plausible(figure: Figure) -> Range | None:
    """The range that a reading of this figure can hardly leave; None where nothing is known.

    The book's own `plausible` counts first. With oversizes on offer it is the largest of them
    plus the wear limit, either side of nominal; a clearance, or a difference that should be
    nothing, may be ten times its limit; a dimension may be ten times its wear off; all else lies
    between nothing and twice the book's largest figure, and what is small and wears away may be
    as far below nothing as it stood above. Source: common practice, no source.
    """
    unit = figure.measured_in
    if figure.plausible is not None:
        return figure.plausible.convert(unit)
    ends = _ends(figure)
    if not ends:
        return None
    if figure.sizes:
        return _by_sizes(figure, ends)
    low, high = min(ends), max(ends)
    wear = high - low
    if kind(unit) == "length" and high <= convert(SMALL, "in", unit):
        if not figure.wears_up:
            return Range(-high, 2 * high, unit, "twice the largest figure")
        below = -10 * high if figure.allowed and figure.allowed.low is not None else 0.0
        return Range(below, 10 * high, unit, "ten times the limit")
    if kind(unit) == "length" and 0 < 10 * wear < low / 2:
        return Range(low - 10 * wear, high + 10 * wear, unit, "ten times the wear")
    if low == 0 and figure.wears_up:
        return Range(0.0, 10 * high, unit, "ten times the limit")
    return Range(0.0, 2 * high, unit, "twice the largest figure")


def limit_band(figure: Figure) -> float | None:
    """How far apart the book's outermost figures lie, new and limit; None where they do not."""
    ends = _ends(figure)
    return (max(ends) - min(ends)) or None if ends else None


def _ends(figure: Figure) -> list[float]:
    """Every end that the book prints, new and limit."""
    ranges = (figure.as_new, figure.allowed)
    return [end for each in ranges if each for end in (each.low, each.high) if end is not None]


def _by_sizes(figure: Figure, ends: list[float]) -> Range:
    unit = figure.measured_in
    nominal = nominal_of(figure)
    largest = max(abs(convert(size.value, size.unit, unit)) for size in figure.sizes)
    reach = largest + max(abs(end - nominal) for end in ends)
    return Range(nominal - reach, nominal + reach, unit, "largest size plus limit")


def nominal_of(figure: Figure) -> float:
    """The size that oversizes and undersizes are counted from, in the figure's unit."""
    if figure.nominal is not None:
        return convert(figure.nominal.value, figure.nominal.unit, figure.measured_in)
    ends = _ends(figure)
    return min(ends) if figure.wears_up else max(ends)


def middle_of_new(figure: Figure) -> float | None:
    """The middle of the new range, in the figure's unit; None where it has not two ends."""
    new = figure.as_new
    if new is None or new.low is None or new.high is None:
        return None
    return (new.low + new.high) / 2
