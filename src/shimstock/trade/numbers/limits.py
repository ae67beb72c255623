"""Limits as a book prints them: a range, or one end that must not be passed."""

import re
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.numbers.quantity import NotUnderstood, convert, parse
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import find

# How people part the ends of a range, and two limits, who have not read how a book does it.
_DASHED = re.compile(r"(\S+?)(?:\s*[-–—]\s*|\s+to\s+)(\S+)(?:\s+(\S+))?", re.IGNORECASE)
_BOTH_LIMITS = re.compile(r"\s*(?:[,;&]|\band\b)\s*(?=(?:max|min)\b)", re.IGNORECASE)

_ONE_WORD = re.compile(r"[^\W\d_]+\.?")

# 5.751 − 5.750 is 0.0010000000000003 to a computer; a reading on the limit is within it.
ON_THE_LINE = 1e-9


@dataclass(frozen=True)
class Range:
    """From low to high, both ends included; an end that is None is open."""

    low: float | None
    high: float | None
    unit: str
    typed: str

    def holds(self, x: float) -> bool:
        """Whether x, in the range's unit, lies within it."""
        return _not_above(self.low, x) and _not_above(x, self.high)

    def convert(self, unit: str) -> "Range":
        """The same range in another unit of its kind."""
        low, high = (
            None if end is None else convert(end, self.unit, unit) for end in (self.low, self.high)
        )
        return Range(low, high, unit, self.typed)


@dataclass(frozen=True)
class Limit:
    """The largest or smallest value allowed."""

    sense: Literal["max", "min"]
    value: float
    unit: str
    typed: str

    def holds(self, x: float) -> bool:
        """Whether x, in the limit's unit, does not pass it."""
        if self.sense == "max":
            return _not_above(x, self.value)
        return _not_above(self.value, x)

    def convert(self, unit: str) -> "Limit":
        """The same limit in another unit of its kind."""
        return Limit(self.sense, convert(self.value, self.unit, unit), unit, self.typed)


def parse_range(typed: str, *, unit: str | None = None, what: str = "") -> Range:
    """Reads "6.1250 .. 6.1260 in", "10 s .." or "0.012 in" (both ends the same).

    unit: taken where the text names none. Raises NotUnderstood.

    >>> parse_range("6.1250 .. 6.1260 in")
    Range(low=6.125, high=6.126, unit='in', typed='6.1250 .. 6.1260 in')
    """
    parts = [p.strip() for p in re.split(r"\s*(?:\.\.|…)\s*", typed.strip())]
    if len(parts) > 2 or not any(parts):
        raise NotUnderstood(typed, "is no range", ("6.1250 .. 6.1260 in", "10 s .."))
    said = _unit_said(parts[-1]) or _unit_said(parts[0]) or unit
    _refuse_unknown_unit(parts[-1], typed)
    if said is None:
        _refuse_dashed(typed)
        raise NotUnderstood(typed, "names no unit", (f"{typed.strip()} in",))
    low, high = (_end(part, said, what, typed) for part in (parts[0], parts[-1]))
    if low is not None and high is not None and low > high:
        wrong = "runs from the larger to the smaller: the ends are swapped"
        ends = (f"{split_number(tidy(part))[0] or part}" for part in (parts[1], parts[0]))
        raise NotUnderstood(typed, wrong, (f"{' .. '.join(ends)} {said}",))
    return Range(low, high, said, typed)


def parse_limit(typed: str, *, unit: str | None = None, what: str = "") -> Limit:
    """Reads "max 6.1350 in" or "min 300 psi".

    unit: taken where the text names none. Raises NotUnderstood.

    >>> parse_limit("max 6.1350 in").holds(6.1350)
    True
    """
    match = re.fullmatch(r"\s*(max|min)\.?\s+(.+)", typed, re.IGNORECASE)
    if not match:
        raise NotUnderstood(typed, "does not say max or min", _either(typed))
    several = _BOTH_LIMITS.split(typed.strip())
    if len(several) > 1:
        wrong = "is two limits in one; they stand as a list"
        raise NotUnderstood(typed, wrong, (f"[{', '.join(several)}]",))
    sense: Literal["max", "min"] = "max" if match[1].lower() == "max" else "min"
    said = _unit_said(match[2]) or unit
    _refuse_unknown_unit(match[2], typed)
    if said is None:
        raise NotUnderstood(typed, "names no unit", (f"{typed.strip()} in",))
    return Limit(sense, parse(match[2], unit=said, what=what).value, said, typed)


def _end(text: str, unit: str, what: str, typed: str) -> float | None:
    if not text:
        return None
    try:
        return parse(text, unit=unit, what=what).value
    except NotUnderstood as error:
        _refuse_dashed(typed)
        raise NotUnderstood(typed, error.wrong, error.would_do) from None


def _refuse_unknown_unit(end: str, typed: str) -> None:
    """Refuse a number that ends in one word which is no unit, and offer it with one."""
    number, word = split_number(tidy(end))
    if number and _ONE_WORD.fullmatch(word) and find(word) is None:
        _refuse_dashed(typed)
        bare = typed.strip()[: -len(word)].rstrip()
        wrong = f"ends in {word}, which is no unit known here"
        raise NotUnderstood(typed, wrong, (f"{bare} in", f"{bare} mm"))


def _refuse_dashed(typed: str) -> None:
    """Offer the two dots where somebody wrote a dash, or to, between two numbers."""
    match = _DASHED.fullmatch(typed.strip())
    if match and all(split_number(tidy(end))[0] for end in (match[1], match[2])):
        meant = f"{match[1]} .. {match[2]} {match[3] or ''}".strip()
        raise NotUnderstood(typed, "is no range: two dots part its ends", (meant,)) from None


def _either(typed: str) -> tuple[str, str]:
    """The same number as a largest and as a smallest, or examples where it is no number."""
    number = typed.strip()
    if not split_number(tidy(number))[0]:
        return "max 6.1350 in", "min 300 psi"
    said = number if _unit_said(number) else f"{number} in"
    return f"max {said}", f"min {said}"


def _unit_said(text: str) -> str | None:
    """The unit at the end of the text, in trade spelling."""
    found = find(split_number(tidy(text))[1])
    return found.name if found else None


def _not_above(a: float | None, b: float | None) -> bool:
    if a is None or b is None:
        return True
    return a <= b or a - b <= ON_THE_LINE * max(abs(a), abs(b))
