"""Numbers as typed at the machine, and what was understood by them."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.uncertainty import rectangular, resolution


@dataclass(frozen=True)
class Reading:
    """What was typed for one figure of one piece, what was understood, and with what it was read.

    values stand in `unit`, in the order of the figure's places; None marks a place not read.
    each: how many readings every number is the mean of.
    """

    figure: str
    typed: tuple[str, ...]
    values: tuple[float | None, ...]
    unit: str
    instrument: Instrument
    meant: bool = False
    each: int = 1

    @property
    def taken(self) -> tuple[tuple[int, float], ...]:
        """The places that were read, each with its value."""
        return tuple((at, value) for at, value in enumerate(self.values) if value is not None)

    def u(self, value: float, places: int = 1) -> float:
        """Standard uncertainty of the mean of this many places, in `unit`; value: the mean.

        The last step read is thrown anew each time; the instrument's own error stays the same.
        Source: JCGM 100:2008, 4.2.3, 4.3.7 and F.2.2.1.
        """
        one = self.instrument
        largest = one.mpe + one.relative * abs(value)
        step = resolution(one.resolution) / sqrt(places * self.each)
        return hypot(step, rectangular(largest))
