"""A network with what was told put in: what of it is still a question."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, log

from shimstock.trade.faults.network import CannotBe, Finding, Network, Spread, Told

MOST = 1e6
"""No single reading speaks more than a million to one: bells know nothing of slips of the pen."""


@dataclass(frozen=True)
class Shown:
    """A finding that was told: how likely what was told is if it shows, and if it does not."""

    leak: float
    weights: dict[str, float]
    if_not: float
    if_so: float


@dataclass(frozen=True)
class Posed:
    """A network as a question.

    there, away: for each cause, its share of the weight if it is there and if it is not, the
    findings that were not seen counted already. shown: findings told that tie causes together.
    """

    there: dict[str, float]
    away: dict[str, float]
    shown: dict[str, Shown]
    exclusive: tuple[tuple[str, ...], ...]


def pose(network: Network, told: Told) -> Posed:
    """Put what was told into a network.

    What was not seen has its causes absent one by one, so it is folded into their chances; what
    was seen or read ties them together. Raises CannotBe for a name that is not in the network.
    Source: Heckerman 1989, for the folding.
    """
    _known(network, told)
    there = {cause: _chance(told, cause, prior) for cause, prior in network.causes.items()}
    away = {cause: 1 - chance for cause, chance in there.items()}
    shown = {}
    for key, said in told.findings.items():
        finding = network.findings[key]
        if_not, if_so = _likely(finding, said)
        if if_so == 0:
            for cause, weight in finding.weights.items():
                there[cause] *= 1 - weight
        elif if_so != if_not:
            shown[key] = Shown(finding.leak, dict(finding.weights), if_not, if_so)
    return Posed(there, away, shown, network.exclusive)


def share(posed: Posed, cause: str) -> float:
    """The chance of a cause that nothing ties to others. Raises CannotBe where it has none."""
    either = posed.there[cause] + posed.away[cause]
    if not either > 0:
        raise CannotBe(f"{cause} is called confirmed, and a sign that it always brings is not seen")
    return posed.there[cause] / either


def _known(network: Network, told: Told) -> None:
    for key in told.findings:
        if key not in network.findings:
            raise CannotBe(f"there is no finding {key!r} here")
    for key in told.causes:
        if key not in network.causes:
            raise CannotBe(f"there is no cause {key!r} here")
    for group in network.exclusive:
        sure = [cause for cause in group if told.causes.get(cause)]
        if len(sure) > 1:
            raise CannotBe(f"{' and '.join(sure)} exclude each other; both are called confirmed")


def _chance(told: Told, cause: str, prior: float) -> float:
    said = told.causes.get(cause)
    return prior if said is None else float(said)


def _likely(finding: Finding, said: bool | float) -> tuple[float, float]:
    """How likely what was told is if the finding does not show, and if it does; largest is 1."""
    if isinstance(said, bool):
        return (0.0, 1.0) if said else (1.0, 0.0)
    if finding.absent is None or finding.present is None:
        raise CannotBe(f"{said} was told where only seen or not seen makes sense")
    for_it = _log_density(finding.present, said) - _log_density(finding.absent, said)
    if for_it >= 0:
        return max(exp(-min(for_it, 700.0)), 1 / MOST), 1.0
    return 1.0, max(exp(max(for_it, -700.0)), 1 / MOST)


def _log_density(spread: Spread, x: float) -> float:

    return -0.5 * ((x - spread.mean) / spread.deviation) ** 2 - log(spread.deviation)
