"""Chances as bars are drawn by them."""

from __future__ import annotations

from dataclasses import dataclass


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
