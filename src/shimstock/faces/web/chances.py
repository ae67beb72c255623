"""Chances as people read them, and as bars are drawn by them."""

from __future__ import annotations

from dataclasses import dataclass

LEAST = 0.01
"""A smaller chance is said as such: nobody means more digits."""


def percent(chance: float) -> str:
    """A chance in words: never as sure as none or all.

    >>> percent(0.347), percent(0.002), percent(0.998), percent(1.0)
    ('35 %', 'under 1 %', 'over 99 %', 'certain')
    """
    if chance in (0, 1):
        return "certain" if chance else "ruled out"
    if chance < LEAST:
        return "under 1 %"
    if chance > 1 - LEAST:
        return "over 99 %"
    return f"{100 * chance:.0f} %"


@dataclass(frozen=True)
class Bar:
    """A chance as a bar with its interval, and a notch at what it was; all in hundredths.

    low, high: "" where no interval is known.
    """

    now: str
    low: str
    high: str
    before: str


def bar(*, chance: float, low: float | None, high: float | None, before: float) -> Bar:
    """Draw a chance. low, high: its interval. before: what it was before anything was told."""
    return Bar(*map(_hundredths, (chance, low, high, before)))


def _hundredths(chance: float | None) -> str:
    return "" if chance is None else f"{100 * chance:.1f}"
