"""The likely play of a link as a bar from none to past its limit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.measure.chain.played import Played

WIDE, EDGE = 320, 6
"""Units of the drawing, and its margin at either side."""
ROOM = 1.15
"""How much further than its limit, or its likely play, a bar reaches at least."""
MIDDLE = 0.5


@dataclass(frozen=True)
class Bar:
    """Where things stand in the drawing, from its left edge.

    low, wide: of the interval; likely: the middle mark; limit: the line, and the end at which its
    words begin. state: within, unsure or over, for shape and colour. says: all of it in words.
    """

    low: float
    wide: float
    likely: float
    limit: float
    limit_says: str
    anchor: str
    state: str
    says: str


def bar(play: Played) -> Bar:
    """Draw a link's likely play."""
    most = ROOM * max(play.limit, play.stands.high)

    def at(size: float) -> float:
        return round(EDGE + (WIDE - 2 * EDGE) * size / most, 1)

    low, high, limit = at(play.stands.low), at(play.stands.high), at(play.limit)
    return Bar(
        low=low,
        wide=round(max(high - low, 2.0), 1),
        likely=at(play.stands.likely),
        limit=limit,
        limit_says=f"{'share' if play.shared else 'limit'} {play.most}",
        anchor="end" if limit > MIDDLE * WIDE else "start",
        state=play.state,
        says=f"{play.name}: {play.says}; {play.chance}",
    )
