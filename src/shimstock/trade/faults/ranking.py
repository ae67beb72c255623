"""How likely each cause is, by the exact way or, past its reach, by drawing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from shimstock.trade.faults.network import CannotBe, Network, Told
from shimstock.trade.faults.plan import plan, tied_together
from shimstock.trade.faults.posed import pose, share

WRITTEN_OUT = 16
"""Up to so many tied causes every machine is written down where tables would hold too much."""
EXACT, SAMPLED = "exact", "sampled"
AT_ITS_PRIOR = 1.02
"""A cause whose odds are not raised by more than this factor has nothing speaking for it."""


@dataclass(frozen=True)
class Ranking:
    """Causes by their chance, the likeliest first.

    priors: what each was before anything was told. errors: for a drawn ranking, how far each
    chance that was drawn may be off, in 95 of 100 cases; the others are exact.
    """

    chances: Mapping[str, float]
    priors: Mapping[str, float]
    method: str = EXACT
    errors: Mapping[str, float] = field(default_factory=dict)

    @property
    def error(self) -> float:
        """The largest of the errors; 0 for an exact ranking."""
        return max(self.errors.values(), default=0.0)

    @property
    def raised(self) -> tuple[str, ...]:
        """The causes that something speaks for, likeliest first; those at their prior are not."""
        return tuple(c for c in self.chances if self.is_raised(c))

    def is_raised(self, cause: str) -> bool:
        """Whether a cause is surely likelier than it was before anything was told."""
        now, before = self.chances[cause] - self.errors.get(cause, 0.0), self.priors[cause]
        return now * (1 - before) > AT_ITS_PRIOR * before * (1 - now)


def rank(network: Network, told: Told) -> Ranking:
    """Rank the causes by what was told.

    Raises CannotBe for unknown names, and where what was told cannot all be true.
    Source: noisy-OR with leaks, Pearl 1988; exact by a frontier of explained findings, all terms
    positive, unlike the sum over subsets of Heckerman 1989. Past its reach few causes are counted
    out machine by machine, and more are drawn.

    >>> from shimstock.trade.faults.network import Finding
    >>> network = Network({"key": 0.03, "gear": 0.03}, {"rock": Finding(0.01, {"gear": 0.8})})
    >>> f"{rank(network, Told({'rock': True})).chances['gear']:.3f}"
    '0.713'
    """
    from shimstock.trade.faults import exact

    posed = pose(network, told)
    for key, said in told.findings.items():
        if said is False and network.findings[key].leak == 1:
            raise CannotBe(f"{key} always shows, and is called not seen")
    order = plan(posed, exact.REACH)
    if order.cells <= exact.REACH:
        return _ranked(network, exact.solve(posed, order).chances)
    if len(posed.there) - len(order.alone) <= WRITTEN_OUT:
        from shimstock.trade.faults.possible import of_every_machine

        return _ranked(network, of_every_machine(posed, order))
    from shimstock.trade.faults.drawn import draw

    drawn = draw(tied_together(posed, order))
    alone = {cause: share(posed, cause) for cause in order.alone}
    return _ranked(network, alone | drawn.chances, SAMPLED, drawn.errors)


def _ranked(
    network: Network,
    chances: Mapping[str, float],
    method: str = EXACT,
    errors: Mapping[str, float] | None = None,
) -> Ranking:
    # rounding has no say in the order of causes that are equally likely
    order = sorted(chances, key=lambda cause: (-round(chances[cause], 12), cause))
    return Ranking({c: chances[c] for c in order}, dict(network.causes), method, errors or {})
