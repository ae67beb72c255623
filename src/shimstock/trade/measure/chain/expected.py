"""What play a link is likely to have before anything is read: as fitted, and the wear since."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

SHAPE = 3.0
"""How quickly great wear becomes rare: the chance falls with the third power of it."""
OVER = 0.15
"""How often a link of an old machine is over its limit; common practice, no source."""
RARE = 1e-4
"""Chance of a play so great that it is not looked for, unless something reads so much."""
TIGHT = 0.1
"""How often one was set tighter than its new range; common practice, no source."""


@dataclass(frozen=True)
class Expected:
    """A link's play before anything is read, in the chain's unit.

    low, high: the new range. limit: the most that is allowed, not below the new range; least: the
    least that is allowed, where too little does harm.
    added: what a gasket of the wrong thickness may add, less than 0 where it takes away; several
    where the pressure angle is not known, each as likely.

    As fitted it lies anywhere in the new range, or now and then below it; wear is never less than
    nothing, and how quickly the link wore is not known, so great wear is rare but possible: the
    wear beyond w has the chance (1 + w/λ)^−3 (Lomax 1954), with λ such that 15 % are over.
    """

    low: float
    high: float
    limit: float
    added: tuple[float, ...] = (0.0,)
    least: float = 0.0

    def __post_init__(self) -> None:
        if not 0 <= self.low <= self.high <= self.limit or self.limit == 0:
            raise ValueError(
                f"new {self.low:g} to {self.high:g} and at most {self.limit:g}: play is not below "
                f"0, and the limit not below the new range"
            )

    def scaled(self, gain: float) -> Expected:
        """The same seen at the end of the chain; gain: movement there for each unit here."""
        added = tuple(gain * each for each in self.added)
        low, high, limit = gain * self.low, gain * self.high, gain * self.limit
        return Expected(low, high, limit, added, gain * self.least)

    @property
    def hardly_more(self) -> float:
        """A movement that only one link in ten thousand has more of."""
        times = float(RARE ** (-1 / SHAPE)) - 1
        return self.high + self.rate * times + max(0.0, *self.added)

    @property
    def rate(self) -> float:
        """λ of its wear from the middle of new to the limit; without that, by the limit itself."""
        allowed = self.limit - (self.low + self.high) / 2 or self.limit
        return allowed / (float(OVER ** (-1 / SHAPE)) - 1)

    def below(self, play: Floats) -> Floats:
        """The chance that the link, with the right gasket, has no more than each play."""
        return (1 - TIGHT) * self._from(self.low, play) + TIGHT * self._from(0.0, play)

    def _from(self, low: float, play: Floats) -> Floats:
        """The chance of no more than each play, fitted evenly from `low` to the end of new."""
        import numpy as np

        if self.high == low:
            return 1 - (1 + np.maximum(play - low, 0) / self.rate) ** -SHAPE
        return (self._summed(play - low) - self._summed(play - self.high)) / (self.high - low)

    def _summed(self, wear: Floats) -> Floats:
        """The chance of no more than a wear, summed from none up to each wear."""
        import numpy as np

        w = np.maximum(wear, 0)
        rare = self.rate / (SHAPE - 1) * (1 - (1 + w / self.rate) ** (1 - SHAPE))
        return w - rare


@dataclass(frozen=True)
class Chain:
    """Links with the play expected of them, and the movement at the end of each unit of it."""

    links: tuple[Expected, ...]
    gains: tuple[float, ...]

    @cached_property
    def at_end(self) -> tuple[Expected, ...]:
        """The movement of the end that is expected of each."""
        return tuple(link.scaled(gain) for link, gain in zip(self.links, self.gains, strict=True))
