"""The points at which the movement of the end is weighed, and what is done with weights on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from shimstock.trade.measure.chain.told import Felt, Read, Told

if TYPE_CHECKING:
    from shimstock.trade.measure.chain.expected import Chain, Expected, Floats

FINE = 2.0
"""Steps to one standard uncertainty of the finest reading."""
FEWEST = 2**9
"""Points that a grid has at least."""
FAR = 8.0
"""Standard uncertainties beyond a reading at which nothing more is looked for."""
NOISE = 1e-13
"""What a transform cannot tell from nothing, as a share of the largest."""


@dataclass(frozen=True)
class Grid:
    """Evenly spaced movements of the end, from none upwards; step in the chain's unit."""

    step: float
    size: int

    @cached_property
    def points(self) -> Floats:
        """The movements."""
        import numpy as np

        return self.step * np.arange(self.size, dtype=np.float64)

    @cached_property
    def edges(self) -> Floats:
        """Half way between one movement and the next, from none on: one more than points."""
        import numpy as np

        edges: Floats = self.step * (np.arange(self.size + 1, dtype=np.float64) - 0.5)
        edges[0] = 0.0
        return edges

    def together(self, one: Floats, other: Floats) -> Floats:
        """Weights of the sum of two movements."""
        import numpy as np

        n = 2 * self.size
        whole = np.fft.irfft(np.fft.rfft(one, n) * np.fft.rfft(other, n), n)
        return _quiet(whole[: self.size])

    def apart(self, whole: Floats, one: Floats) -> Floats:
        """Weights of the rest, from weights of a sum and of one movement in it."""
        import numpy as np

        n = 2 * self.size
        rest = np.fft.irfft(np.fft.rfft(whole, n) * np.conj(np.fft.rfft(one, n)), n)
        return _quiet(rest[: self.size])


def _quiet(weights: Floats) -> Floats:
    """Weights without what the transform leaves where there is nothing."""
    import numpy as np

    return np.where(weights > NOISE * weights.max(), weights, 0.0)


def grid_for(chain: Chain, told: Sequence[Told], most: int) -> Grid:
    """A grid as fine as the finest reading asks for, and as long as anything can be moved.

    most: points that it may have; with them it is as fine as it can be.
    """
    finest = min((_at_end(chain, each)[1] for each in told), default=float("inf"))
    longest = _longest(chain, told)
    size = FEWEST
    while size < most and longest / (size - 1) > finest / FINE:
        size *= 2
    return Grid(longest / (size - 1), size)


def _longest(chain: Chain, told: Sequence[Told]) -> float:
    """The most that the end can move, by what was read or else by what is expected."""
    most = rest = 0.0
    for at in reversed(range(len(chain.links))):
        read = [_most(chain, each) for each in told if isinstance(each, Read) and each.link == at]
        felt = [_most(chain, each) for each in told if isinstance(each, Felt) and each.link == at]
        rest = min(felt, default=rest + min(read, default=chain.at_end[at].hardly_more))
        most = max(most, rest, *felt, *read)
    return most


def _most(chain: Chain, told: Told) -> float:
    value, u = _at_end(chain, told)
    return max(0.0, value) + FAR * u


def _at_end(chain: Chain, told: Told) -> tuple[float, float]:
    """A reading and its uncertainty as movement of the end."""
    gain = chain.gains[told.link] if isinstance(told, Read) else 1.0
    return gain * told.value, gain * told.u


def chances(grid: Grid, link: Expected) -> Floats:
    """The chance of each movement by what is expected of a link, whatever its gasket adds."""
    import numpy as np

    every = [with_gasket(grid, link, added) for added in link.added]
    mean: Floats = np.mean(every, axis=0)
    return mean


def with_gasket(grid: Grid, link: Expected, added: float) -> Floats:
    """The chance of each movement with a gasket that adds so much, and no less than none."""
    import numpy as np

    cells = np.diff(link.below(grid.edges - added))
    left = 1.0 - float(link.below(np.array([-added]))[0])
    return cells / left


def likely(grid: Grid, read: Sequence[tuple[float, float]]) -> Floats:
    """How strongly readings speak for each movement; each a value and its uncertainty.

    The uncertainty is widened by that of the grid's own step, JCGM 100:2008, F.2.2.1.
    """
    import numpy as np

    weight = np.zeros(grid.size)
    for value, u in read:
        weight -= (grid.points - value) ** 2 / (2 * (u**2 + grid.step**2 / 12))
    strength: Floats = np.exp(weight - weight.max())
    return strength


def evened(weights: Floats) -> Floats:
    """Weights made into chances; as they are where all are nothing."""
    total = float(weights.sum())
    return weights / total if total > 0 else weights
