"""Measurement uncertainty as the GUM (JCGM 100:2008) reckons it."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import floor, inf, sqrt
from statistics import NormalDist

_STANDARD = NormalDist()


@dataclass(frozen=True)
class Component:
    """One contribution: what it is, how strongly it acts, its standard uncertainty."""

    label: str
    sensitivity: float
    u: float
    dof: float = inf

    @property
    def share(self) -> float:
        """What it contributes to the result, in the result's unit: |c|·u."""
        return abs(self.sensitivity) * self.u


@dataclass(frozen=True)
class Combined:
    """A combined standard uncertainty, its effective degrees of freedom, and who put in what."""

    u: float
    dof: float
    parts: tuple[tuple[str, float], ...]

    def expanded(self, level: float) -> float:
        """The half-width that holds the true value with probability `level` (0.95 is 95 %).

        Degrees of freedom are cut to the whole number below, as JCGM 100 G.4.1 advises.
        """
        return coverage_factor(level, self.dof if self.dof == inf else floor(self.dof)) * self.u


def rectangular(half_width: float) -> float:
    """Standard uncertainty of a value known only to lie within ± half_width.

    Source: JCGM 100:2008, 4.3.7.

    >>> round(rectangular(0.40), 2)
    0.23
    """
    return half_width / sqrt(3)


def resolution(step: float) -> float:
    """Standard uncertainty of a reading to the nearest step.

    Source: JCGM 100:2008, F.2.2.1.

    >>> round(resolution(1), 2)
    0.29
    """
    return step / sqrt(12)


def of_difference(one: float, other: float) -> float:
    """Standard uncertainty of the difference of two independent values, of one unit.

    Source: JCGM 100:2008, 5.1.2.

    >>> of_difference(3, 4)
    5.0
    """
    return combine((Component("one", 1, one), Component("other", -1, other))).u


def combine(components: Iterable[Component]) -> Combined:
    """Independent contributions put together; dof by the Welch-Satterthwaite formula.

    Source: JCGM 100:2008, 5.1.2 and G.4.1.
    """
    kept = tuple(components)
    u = rss(kept)
    spread = sum((c.share / u) ** 4 / c.dof for c in kept) if u else 0.0
    return Combined(u, 1 / spread if spread else inf, tuple((c.label, c.share) for c in kept))


def worst_case(components: Iterable[Component]) -> float:
    """The sum of all contributions at their worst together; `u` holds each one's tolerance."""
    return sum(c.share for c in components)


def rss(components: Iterable[Component]) -> float:
    """The root of the sum of squares of the contributions."""
    return sqrt(sum(c.share**2 for c in components))


def coverage_factor(level: float, dof: float = inf) -> float:
    """How many standard uncertainties hold the true value with probability `level`.

    dof: degrees of freedom; without end, the normal distribution is used.
    Raises ValueError for a level outside 0 to 1 or dof not above 0.
    Source: JCGM 100:2008, table G.2.

    >>> round(coverage_factor(0.95), 2)
    1.96
    """
    if not 0 < level < 1:
        raise ValueError(f"level {level:g} must lie between 0 and 1; 0.95 is 95 %")
    if dof <= 0:
        raise ValueError(f"degrees of freedom {dof:g} must be above 0")
    upper = 0.5 + level / 2
    if dof == inf:
        return _STANDARD.inv_cdf(upper)
    from scipy.special import stdtrit

    return float(stdtrit(dof, upper))
