"""The play of each link by everything that was read: exact, on a grid, without any chance in it.

Each reading at the end is the sum of what the links beyond the hold move it. Those sums follow one
another, each the next one plus one link, so that what is read before a link and what is read behind
it can be brought to it by one pass from each side, and no link needs to be tried against all the
others. Source: the two passes are the forward-backward algorithm of a hidden Markov chain (Rabiner
1989, section III); JCGM 101:2008 for a distribution in place of a value with its ±.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import TYPE_CHECKING

from shimstock.trade.measure.chain.expected import Chain
from shimstock.trade.measure.chain.grid import Grid, chances, evened, grid_for, likely
from shimstock.trade.measure.chain.told import Felt, Read, Told

if TYPE_CHECKING:
    from shimstock.trade.measure.chain.expected import Floats

MOST = 2**13
"""Points that a grid may have."""
MISFIT = 3.5
"""Standard uncertainties between a reading and what all together say: past them it is a slip."""


class Contradiction(ValueError):
    """Readings that cannot all be true; `told` is the one that fits least."""

    def __init__(self, told: Told) -> None:
        super().__init__("the readings along the chain cannot all be true: read them again")
        self.told = told


@dataclass(frozen=True)
class Passed:
    """What the two passes leave of each link, by its movement of the end.

    links: its chance at each point of the grid. by_readings: how strongly the readings alone,
    this link's own and all others, speak for each point. sums: for each link, the chance of the
    movement with everything before it held.
    """

    grid: Grid
    links: tuple[Floats, ...]
    by_readings: tuple[Floats, ...]
    sums: tuple[Floats, ...]


def passed(chain: Chain, told: Sequence[Told], most: int = MOST) -> Passed:
    """Bring all that was read along a chain to each of its links.

    most: points that the grid may have. Raises Contradiction where the readings cannot all be true.
    """
    import numpy as np

    grid = grid_for(chain, told, most)
    own = [_own(grid, chain, told, at) for at in range(len(chain.links))]
    felt = [_felt(grid, told, at) for at in range(len(chain.links))]
    moved = [chances(grid, each) * seen for each, seen in zip(chain.at_end, own, strict=True)]
    behind = _from_behind(grid, moved, felt)
    before = np.ones(grid.size)
    links, by_readings, sums = [], [], []
    for at, each in enumerate(moved):
        sums.append(evened(behind[at] * before))
        before = before * felt[at]
        message = grid.apart(before, behind[at + 1])
        links.append(evened(each * message))
        by_readings.append(message * own[at])
        before = _to_one(grid.apart(before, each))
    found = Passed(grid, tuple(links), tuple(by_readings), tuple(sums))
    _refuse_misfits(chain, told, found)
    return found


def _from_behind(grid: Grid, moved: Sequence[Floats], felt: Sequence[Floats]) -> list[Floats]:
    """For each link the movement of it and all behind it, by what was read there; then no movement.

    moved: each link's chances; felt: how strongly what was read with its hold speaks.
    """
    import numpy as np

    none = np.zeros(grid.size)
    none[0] = 1.0
    behind = [none]
    for each, seen in zip(reversed(moved), reversed(felt), strict=True):
        behind.insert(0, _to_one(grid.together(behind[0], each) * seen))
    return behind


def _own(grid: Grid, chain: Chain, told: Sequence[Told], at: int) -> Floats:
    """How strongly readings on the link itself speak for each movement."""
    gain = chain.gains[at]
    own = [each for each in told if isinstance(each, Read) and each.link == at]
    return likely(grid, [(gain * each.value, gain * each.u) for each in own])


def _felt(grid: Grid, told: Sequence[Told], at: int) -> Floats:
    """How strongly readings with everything before the link held speak for each movement."""
    felt = [each for each in told if isinstance(each, Felt) and each.link == at]
    return likely(grid, [(each.value, each.u) for each in felt])


def _to_one(weights: Floats) -> Floats:
    """Weights with the largest brought to 1; as they are where all are nothing."""
    largest = float(weights.max())
    return weights / largest if largest > 0 else weights


def _refuse_misfits(chain: Chain, told: Sequence[Told], found: Passed) -> None:
    def misfit(each: Told) -> float:
        one = found.sums[each.link] if isinstance(each, Felt) else found.links[each.link]
        gain = 1.0 if isinstance(each, Felt) else chain.gains[each.link]
        mean = float(one @ found.grid.points) / gain
        return abs(each.value - mean) / hypot(each.u, found.grid.step / gain)

    worst = max(told, key=misfit, default=None)
    lost = any(float(each.sum()) <= 0 for each in found.links)
    if worst is not None and (lost or misfit(worst) > MISFIT):
        raise Contradiction(worst)
