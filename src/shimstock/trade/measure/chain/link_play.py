"""What is likely to be the play of one link, in a few numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from shimstock.trade.measure.chain.expected import Chain, Expected
from shimstock.trade.measure.chain.grid import Grid, evened, with_gasket
from shimstock.trade.measure.chain.posterior import MOST, Passed, passed
from shimstock.trade.measure.chain.told import Told

if TYPE_CHECKING:
    from shimstock.trade.measure.chain.expected import Floats

LEVEL = 0.90
"""How many of such intervals hold the true play."""


@dataclass(frozen=True)
class LinkPlay:
    """The play of one link, in the chain's unit: as likely above as below, and in 90 of 100 cases.

    over: the chance that it is over its limit; under: that it is below the least allowed.
    """

    low: float
    likely: float
    high: float
    over: float
    under: float

    def times(self, factor: float) -> LinkPlay:
        """The same in another unit of length."""
        low, likely, high = (factor * each for each in (self.low, self.likely, self.high))
        return LinkPlay(low, likely, high, self.over, self.under)


@dataclass(frozen=True)
class Plays:
    """A link as it stands, and with the right gasket: the same where the gasket is right."""

    stands: LinkPlay
    right: LinkPlay


def plays(chain: Chain, told: Sequence[Told], most: int = MOST) -> tuple[Plays, ...]:
    """The play of each link by everything that was read along the chain.

    most: points of the grid, at most. Raises Contradiction where the readings cannot all be true.

    >>> from shimstock.trade.measure.chain.expected import Expected
    >>> from shimstock.trade.measure.chain.told import Felt
    >>> mesh = Expected(0.003, 0.006, 0.012)
    >>> told = [Felt(0, 0.200, 0.002), Felt(1, 0.040, 0.002)]
    >>> first, second = plays(Chain((mesh, mesh), (10.0, 10.0)), told)
    >>> round(first.stands.likely, 3), round(second.stands.likely, 3)
    (0.016, 0.004)
    """
    found = passed(chain, told, most)
    return tuple(_of_link(chain, found, at) for at in range(len(chain.links)))


def chances_over(chain: Chain, found: Passed) -> list[float]:
    """The chance of each link, as it stands, that it is over its limit."""
    ends = zip(chain.at_end, found.links, strict=True)
    return [1 - _up_to(link.limit, found.grid.edges, _summed(each)) for link, each in ends]


def _of_link(chain: Chain, found: Passed, at: int) -> Plays:
    link, gain, edges = chain.at_end[at], chain.gains[at], found.grid.edges
    stands = _told_by(link, gain, edges, _summed(found.links[at]))
    if set(link.added) == {0.0}:
        return Plays(stands, stands)
    return Plays(stands, _told_by(link, gain, *_right(chain, found, at)))


def _right(chain: Chain, found: Passed, at: int) -> tuple[Floats, Floats]:
    """Edges, and the chance that a link with the right gasket moves the end no more than each."""
    import numpy as np

    link, grid = chain.at_end[at], found.grid
    further = max(0.0, *(-each for each in link.added))
    edges = Grid(grid.step, grid.size + ceil(further / grid.step)).edges
    each = [with_gasket(grid, link, added) * found.by_readings[at] for added in link.added]
    whole = sum(float(one.sum()) for one in each)
    shifted = [
        np.interp(edges + added, grid.edges, np.append(0.0, np.cumsum(one))) / whole
        for added, one in zip(link.added, each, strict=True)
    ]
    return edges, np.sum(shifted, axis=0)


def _summed(chances: Floats) -> Floats:
    """The chance of no more than each edge of the grid."""
    import numpy as np

    return np.append(0.0, np.cumsum(evened(chances)))


def _told_by(link: Expected, gain: float, edges: Floats, below: Floats) -> LinkPlay:
    """A distribution in a few numbers; below: the chance of no more than each edge."""
    low, likely, high = (_at(edges, below, p) / gain for p in _ENDS)
    over, under = 1 - _up_to(link.limit, edges, below), _up_to(link.least, edges, below)
    return LinkPlay(low, likely, high, over, under if link.least else 0.0)


_ENDS = ((1 - LEVEL) / 2, 0.5, (1 + LEVEL) / 2)


def _at(edges: Floats, below: Floats, p: float) -> float:
    """The movement that is passed with the chance 1 − p."""
    import numpy as np

    after = int(np.searchsorted(below, p))
    if after == 0:
        return float(edges[0])
    under, upper = float(below[after - 1]), float(below[min(after, len(below) - 1)])
    share = (p - under) / (upper - under) if upper > under else 0.0
    first = float(edges[after - 1])
    return first + share * (float(edges[min(after, len(edges) - 1)]) - first)


def _up_to(size: float, edges: Floats, below: Floats) -> float:
    """The chance of no more than a size."""
    import numpy as np

    return min(1.0, float(np.interp(size, edges, below)))
