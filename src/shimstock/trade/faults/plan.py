"""The order in which causes are taken, so that few findings are open at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import inf

from shimstock.trade.faults.posed import Posed

GROUP = "\0group "
"""Before the number of an exclusive group; no finding can be called so."""


@dataclass(frozen=True)
class Opens:
    """A finding begins: it may be explained already by a reason that is not listed."""

    axis: int
    leak: float


@dataclass(frozen=True)
class Takes:
    """A cause is taken: it may explain the findings on these axes, and fill these groups."""

    cause: str
    explains: tuple[tuple[int, float], ...]
    fills: tuple[int, ...]


@dataclass(frozen=True)
class Closes:
    """No further cause can explain the finding on this axis: what was told of it counts now."""

    axis: int
    if_not: float
    if_so: float


Step = Opens | Takes | Closes


@dataclass(frozen=True)
class Plan:
    """Steps in order; cells: how many numbers all the tables between them hold."""

    steps: tuple[Step, ...]
    alone: tuple[str, ...]
    cells: int


def plan(posed: Posed, most: float = inf) -> Plan:
    """Take the causes in an order that keeps few findings open at once.

    Greedy: next comes the finding or group whose remaining causes begin the fewest others, among
    those that the causes tie together. Causes that nothing ties to others stand alone. most: how
    many numbers the tables may hold; where it takes more, no steps are given.
    """
    waiting = {key: set(each.weights) & posed.there.keys() for key, each in posed.shown.items()}
    waiting |= {f"{GROUP}{n}": set(group) for n, group in enumerate(posed.exclusive)}
    ties = {cause: [k for k, causes in waiting.items() if cause in causes] for cause in posed.there}
    alone = tuple(cause for cause in posed.there if not ties[cause])
    steps: list[Step] = []
    cells = 0
    for key in [key for key, causes in waiting.items() if not causes]:
        steps += [Opens(0, posed.shown[key].leak), _close(posed, key, 0)]
        del waiting[key]
    for group in _groups(waiting, ties):
        more, held = _in_order(posed, {key: waiting[key] for key in group}, ties, most - cells)
        steps += more
        cells += held
        if cells > most:
            return Plan((), alone, cells)
    return Plan(tuple(steps), alone, cells)


def tied_together(posed: Posed, order: Plan) -> Posed:
    """The same question without the causes that stand alone."""
    alone = set(order.alone)
    there = {cause: each for cause, each in posed.there.items() if cause not in alone}
    return replace(posed, there=there, away={cause: posed.away[cause] for cause in there})


def _groups(waiting: dict[str, set[str]], ties: dict[str, list[str]]) -> Iterator[list[str]]:
    """Findings and groups that causes tie together, those of one tie after those of another."""
    left = dict.fromkeys(sorted(waiting))
    while left:
        found = [next(iter(left))]
        del left[found[0]]
        for key in found:  # it grows as more are tied to what was found
            near = {other for cause in waiting[key] for other in ties[cause] if other in left}
            found += sorted(near)
            for other in near:
                del left[other]
        yield found


def _in_order(
    posed: Posed, waiting: dict[str, set[str]], ties: dict[str, list[str]], most: float
) -> tuple[list[Step], int]:
    """Steps through what is tied together, and how many numbers the tables then hold.

    It is left as it is where they would hold more than most.
    """
    steps: list[Step] = []
    open_now: list[str] = []
    cells = 0
    while waiting and cells <= most:
        nearest = min(waiting, key=lambda key: (_begins(waiting[key], ties, open_now), key))
        for cause in sorted(waiting[nearest], key=lambda c: (_begins({c}, ties, open_now), c)):
            for key in ties[cause]:
                if key not in open_now:
                    steps.append(Opens(len(open_now), _leak(posed, key)))
                    open_now.append(key)
            steps.append(_take(posed, cause, ties[cause], open_now))
            cells += 2 ** len(open_now)
            for key in ties[cause]:
                waiting[key].discard(cause)
                if not waiting[key]:
                    steps.append(_close(posed, key, open_now.index(key)))
                    open_now.remove(key)
                    del waiting[key]
    return steps, cells


def _begins(causes: set[str], ties: dict[str, list[str]], open_now: list[str]) -> tuple[int, int]:
    new = {key for cause in causes for key in ties[cause]} - set(open_now)
    return len(new), len(causes)


def _leak(posed: Posed, key: str) -> float:
    return posed.shown[key].leak if key in posed.shown else 0.0


def _take(posed: Posed, cause: str, keys: list[str], open_now: list[str]) -> Takes:
    explains = tuple(
        (open_now.index(key), posed.shown[key].weights[cause]) for key in keys if key in posed.shown
    )
    return Takes(cause, explains, tuple(open_now.index(k) for k in keys if k not in posed.shown))


def _close(posed: Posed, key: str, axis: int) -> Closes:
    if key in posed.shown:
        return Closes(axis, posed.shown[key].if_not, posed.shown[key].if_so)
    return Closes(axis, 1.0, 1.0)  # a group may be empty or filled
