"""What it costs to get to a reading."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from shimstock.trade.machine.book import Book

TO_ROCK, ON_THE_LINK = 5.0, 10.0
"""Minutes to hold and rock once, and to set a gauge on a link; common practice, no source."""


@dataclass(frozen=True)
class WayTo:
    """Minutes to open what is in the way to a joint or part, and to close it again."""

    opening: float
    closing: float

    @property
    def minutes(self) -> float:
        """Both together."""
        return self.opening + self.closing


Ways = Mapping[str, WayTo]
"""The way to each joint and part, by its key in the book, as the machine stands."""

NOTHING = WayTo(0.0, 0.0)


def way_to(book: Book, place: str | None, ways: Ways) -> WayTo:
    """The way to a joint or a part; nothing to open where it names none.

    Where `ways` does not hold it, the book's minutes for the joint itself, or for the quickest
    joint that brings the part into reach, beside what is in the way to that.
    """
    if place is None:
        return NOTHING
    if place in ways:
        return ways[place]
    joint = book.joints.get(place)
    reaching = [joint] if joint else [j for j in book.joints.values() if place in j.reaches]
    costs = [WayTo(each.open, each.close) for each in reaching]
    return min(costs, key=lambda cost: cost.minutes, default=NOTHING)
