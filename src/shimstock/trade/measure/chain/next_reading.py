"""Which reading to take next: the one that settles most, for its minutes, which link is over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import log2
from typing import TYPE_CHECKING

from shimstock.trade.measure.chain.expected import Chain
from shimstock.trade.measure.chain.grid import evened
from shimstock.trade.measure.chain.link_play import chances_over
from shimstock.trade.measure.chain.posterior import Contradiction, Passed, passed
from shimstock.trade.measure.chain.told import Felt, Told

if TYPE_CHECKING:
    from shimstock.trade.measure.chain.expected import Floats

COARSE = 2**10
"""Points of the grid while looking ahead."""
ANSWERS = 8
"""What a reading may show, as so many equally likely values."""
SURE = 0.03
"""A link whose chance to be over is below this, or above 1 less this, is settled."""


@dataclass(frozen=True)
class Offer:
    """A reading that could be taken: `told` with its uncertainty, and all the minutes it costs."""

    told: Told
    minutes: float


@dataclass(frozen=True)
class Worth:
    """An offer and how much it is expected to settle, in bits of doubt about the links."""

    offer: Offer
    settles: float

    @property
    def a_minute(self) -> float:
        """What it settles for each of its minutes."""
        return self.settles / self.offer.minutes


def best_next(chain: Chain, told: Sequence[Told], offers: Sequence[Offer]) -> Worth | None:
    """The offer that settles most for its minutes; None where each link is settled.

    The doubt about a link is the entropy of its chance to be over, and what a reading settles is
    how much less doubt is expected after it, over all that it may show.
    Source: expected information (Lindley 1956), here for each minute, as checks are chosen by
    chance and cost in fault finding.
    Raises Contradiction where the readings cannot all be true.
    """
    found = passed(chain, told, COARSE)
    chances = chances_over(chain, found)
    if all(p < SURE or p > 1 - SURE for p in chances):
        return None
    now = sum(map(doubt, chances))
    worths = [Worth(each, now - _after(chain, told, found, each)) for each in offers]
    best = max(worths, key=lambda each: each.a_minute, default=None)
    return best if best is not None and best.settles > 0 else None


def doubt(p: float) -> float:
    """Bits of doubt in a chance: none where it is sure, one where it is even.

    >>> doubt(0.5), doubt(0.0)
    (1.0, 0.0)
    """
    return sum(each * log2(1 / each) for each in (p, 1 - p) if each > 0)


def _after(chain: Chain, told: Sequence[Told], found: Passed, offer: Offer) -> float:
    """Doubt expected after a reading: the mean over what it may show."""
    doubts = []
    for value in _may_show(chain, found, offer.told):
        try:
            then = passed(chain, [*told, replace(offer.told, value=value)], COARSE)
        except Contradiction:  # a value at the far end of what may be shown
            continue
        doubts.append(sum(map(doubt, chances_over(chain, then))))
    return sum(doubts) / len(doubts) if doubts else float("inf")


def _may_show(chain: Chain, found: Passed, told: Told) -> list[float]:
    """Equally likely values that a reading may show, from small to large."""
    import numpy as np

    gain = 1.0 if isinstance(told, Felt) else chain.gains[told.link]
    true = (found.sums if isinstance(told, Felt) else found.links)[told.link]
    summed = np.cumsum(_read_with(found, true, told.u * gain))
    shares = (np.arange(ANSWERS) + 0.5) / ANSWERS
    at = np.searchsorted(summed, shares).clip(0, found.grid.size - 1)
    return [float(found.grid.points[n]) / gain for n in at]


def _read_with(found: Passed, true: Floats, u: float) -> Floats:
    """The chance of each reading, from that of each true movement; u: of the reading."""
    import numpy as np

    points = found.grid.points
    above = np.exp(-(points**2) / (2 * u**2))
    more, less = found.grid.together(true, above), found.grid.apart(true, above)
    return evened(more + less - true)
