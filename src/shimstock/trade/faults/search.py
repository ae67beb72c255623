"""The next check: by the minutes still to go, looked ahead over what each result would leave."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from shimstock.trade.faults.network import Check, Network, Told


@dataclass(frozen=True)
class Offer:
    """A check that could be done next.

    minutes: of the check itself. opening: minutes to open `joints`, which are still closed.
    finds: chance that it finds the cause. expected: minutes until the cause is found, this check
    first and the best after it.
    """

    check: str
    minutes: float
    opening: float
    joints: tuple[str, ...]
    finds: float
    expected: float


@dataclass(frozen=True)
class Question:
    """A sign that nobody has looked for, and that costs nothing.

    saves: minutes by which knowing it shortens the search. seen: chance that it is there.
    """

    finding: str
    seen: float
    saves: float


@dataclass(frozen=True)
class Search:
    """How to go on.

    offers: the best first. questions: what to ask before any check. unlisted: chance that what
    was seen has no cause that these checks can find.
    """

    offers: tuple[Offer, ...] = ()
    questions: tuple[Question, ...] = ()
    unlisted: float = 0.0


def next_checks(
    network: Network,
    told: Told,
    checks: Mapping[str, Check],
    joints: Mapping[str, float],
    open_now: frozenset[str] = frozenset(),
) -> Search:
    """Say which check comes next, by expected minutes until a cause of what was seen is found.

    joints: minutes to open each. open_now: joints that stand open and cost nothing.
    """
    return Search()
