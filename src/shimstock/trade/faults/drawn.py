"""Machines drawn at random, and led step by step to what was told, where tables grow too large."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.network import NOT_ALL_TRUE, CannotBe
from shimstock.trade.faults.posed import Posed, Shown

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Flags = NDArray[np.bool_]

HERDS, HEADS = 16, 500
"""Machines are drawn in herds of their own, so that the spread between herds tells the error."""
SWEEPS = 8
NEARLY = 1 - 1e-9
"""A weight of one is taken as this, so that what it multiplied can be divided out again."""
MOST_ODDS = 1e100
STUDENT_95 = 2.131
"""Of 15 degrees of freedom: JCGM 100:2008, table G.2."""


@dataclass(frozen=True)
class Drawn:
    """Chances of the causes, how far each may be off (k for 95 of 100), and the machines drawn.

    there: machines down, causes across, in the order of the network; all weigh the same.
    """

    chances: dict[str, float]
    errors: dict[str, float]
    there: Flags

    @property
    def error(self) -> float:
        """The largest of the errors."""
        return max(self.errors.values(), default=0.0)


def draw(posed: Posed, seed: int = 1) -> Drawn:
    """Draw machines that fit what was told.

    Findings are let in one after another; machines that fit the new one badly give way to those
    that fit it well, and each is then stirred cause by cause.
    Source: sequential Monte Carlo samplers, Del Moral, Doucet and Jasra 2006; Gibbs sampling.
    """
    import numpy as np

    there = _Herds(posed, np.random.default_rng(seed)).led()
    shares = there.reshape(HERDS, HEADS, -1).mean(axis=1)
    error = STUDENT_95 * shares.std(axis=0, ddof=1) / np.sqrt(HERDS)
    chances = dict(zip(posed.there, (float(x) for x in shares.mean(axis=0)), strict=True))
    errors = dict(zip(posed.there, (float(x) for x in error), strict=True))
    return Drawn(chances, errors, there)


class _Herds:
    """Machines that are led together, herd after herd; a row for each, a column for each cause."""

    def __init__(self, posed: Posed, random: np.random.Generator) -> None:
        import numpy as np

        self.posed, self.random = posed, random
        self.causes = list(posed.there)
        self.column = {cause: n for n, cause in enumerate(self.causes)}
        self.shut_out = self._excluded()
        chance = np.array([_chance(posed, cause) for cause in self.causes])
        self.odds = np.array([_odds(posed, cause) for cause in self.causes])
        self.there = random.random((HERDS * HEADS, len(self.causes))) < chance
        self.told: list[tuple[Shown, dict[int, float]]] = []
        for group in posed.exclusive:
            self._leave_one(group)

    def led(self) -> Flags:
        """Let in what was told, what most causes explain first, and stir after each."""
        for shown in sorted(self.posed.shown.values(), key=lambda s: (-len(s.weights), s.leak)):
            weights = {
                self.column[c]: min(w, NEARLY) for c, w in shown.weights.items() if c in self.column
            }
            self._choose(self._fit(shown, weights))
            self.told.append((shown, weights))
            self._stir()
        for _ in range(SWEEPS):
            self._stir()
        return self.there

    def _fit(self, shown: Shown, weights: dict[int, float]) -> Floats:
        quiet = self._quiet(shown, weights)
        return shown.if_not * quiet + shown.if_so * (1 - quiet)

    def _quiet(self, shown: Shown, weights: dict[int, float]) -> Floats:
        """For each machine, the chance that a finding does not show."""
        import numpy as np

        quiet: Floats = np.full(len(self.there), 1.0 - shown.leak)
        for column, weight in weights.items():
            quiet *= np.where(self.there[:, column], 1 - weight, 1.0)
        return quiet

    def _choose(self, fit: Floats) -> None:
        """Machines in proportion to how well they fit, by evenly spaced draws in each herd."""
        import numpy as np

        rows = []
        for herd in range(HERDS):
            fits = fit[herd * HEADS : (herd + 1) * HEADS]
            if not fits.sum() > 0:
                raise CannotBe(NOT_ALL_TRUE)
            ends = np.cumsum(fits / fits.sum())
            marks = (np.arange(HEADS) + self.random.random()) / HEADS
            rows.append(herd * HEADS + np.minimum(np.searchsorted(ends, marks), HEADS - 1))
        self.there = self.there[np.concatenate(rows)]

    def _stir(self) -> None:
        """Draw each cause anew, given all else of its machine."""
        import numpy as np

        tied: dict[int, list[tuple[int, float]]] = {}
        quiet = [self._quiet(shown, weights) for shown, weights in self.told]
        for n, (_, weights) in enumerate(self.told):
            for column, weight in weights.items():
                tied.setdefault(column, []).append((n, weight))
        for column in range(len(self.causes)):
            odds = np.full(len(self.there), self.odds[column])
            without = {}
            for n, weight in tied.get(column, ()):
                shown = self.told[n][0]
                rest = quiet[n] / np.where(self.there[:, column], 1 - weight, 1.0)
                without[n] = rest
                there = shown.if_not * rest * (1 - weight) + shown.if_so * (1 - rest * (1 - weight))
                away = shown.if_not * rest + shown.if_so * (1 - rest)
                odds = np.minimum(odds * there / np.maximum(away, 1 / MOST_ODDS), MOST_ODDS)
            for other in self.shut_out.get(column, ()):
                odds[self.there[:, other]] = 0
            self.there[:, column] = self.random.random(len(odds)) * (1 + odds) < odds
            for n, weight in tied.get(column, ()):
                quiet[n] = without[n] * np.where(self.there[:, column], 1 - weight, 1.0)

    def _excluded(self) -> dict[int, list[int]]:
        found: dict[int, list[int]] = {}
        for group in self.posed.exclusive:
            for cause in group:
                others = [self.column[c] for c in group if c != cause]
                found.setdefault(self.column[cause], []).extend(others)
        return found

    def _leave_one(self, group: tuple[str, ...]) -> None:
        columns = [self.column[cause] for cause in group]
        best = max(columns, key=lambda n: self.odds[n])
        many = self.there[:, columns].sum(axis=1) > 1
        for column in columns:
            self.there[many, column] = column == best


def _chance(posed: Posed, cause: str) -> float:
    total = posed.there[cause] + posed.away[cause]
    return posed.there[cause] / total if total else 0.0


def _odds(posed: Posed, cause: str) -> float:
    return min(posed.there[cause] / posed.away[cause], 1e12) if posed.away[cause] else 1e12
