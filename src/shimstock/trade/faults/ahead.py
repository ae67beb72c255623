"""What a search still costs: minutes until the cause is found, from any point of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Flags = NDArray[np.bool_]
    Ints = NDArray[np.intp]

NEGLIGIBLE = 1e-5
"""A search that is over but for this chance is taken to be over."""


@dataclass(frozen=True, eq=False)
class Field:
    """Everything that a search may do, as arrays: machines down, checks across.

    finds: chance that a check finds the cause in a machine. minutes: of each check. needs: the
    joints that each needs open. opening: minutes of each joint. tells: for each check, the chance
    in each machine that a result of it shows, besides finding.
    """

    finds: Floats
    minutes: Floats
    needs: Flags
    opening: Floats
    tells: Sequence[Sequence[Floats]]

    @cached_property
    def never(self) -> Floats:
        """For each machine, the chance that no check at all finds the cause."""
        never: Floats = (1 - self.finds).prod(axis=1)
        return never

    @cached_property
    def hits(self) -> tuple[tuple[Ints, Floats, Floats], ...]:
        """For each check: in which machines it can find the cause, and what happens in those.

        How surely it finds the cause in each of them, and how surely every check does.
        """
        found = []
        for check in range(self.finds.shape[1]):
            (machines,) = self.finds[:, check].nonzero()
            found.append((machines, self.finds[machines, check], self.finds[machines]))
        return tuple(found)


@dataclass(frozen=True, eq=False)
class Point:
    """How far a search has come.

    weight: of each machine. alive: the chance in each that the cause is not found yet. done: the
    checks that were done. open_now: the joints that are open.
    """

    field: Field
    weight: Floats
    alive: Floats
    done: Flags
    open_now: Flags

    @property
    def chance(self) -> float:
        """The chance to be here, with a cause still to be found that the checks can find."""
        return float(self.weight @ (self.alive - self.field.never))

    @cached_property
    def costs(self) -> Floats:
        """Minutes of each check with what must still be opened for it."""
        closed = self.field.opening * ~self.open_now
        costs: Floats = self.field.minutes + self.field.needs @ closed
        return costs

    @cached_property
    def gains(self) -> Floats:
        """The chance that each check, done now, finds the cause."""
        gains: Floats = (self.weight * self.alive) @ self.field.finds
        gains[self.done] = 0
        return gains

    def after(self, check: int) -> Point:
        """The point after a check that did not find the cause."""
        import numpy as np

        done = self.done.copy()
        done[check] = True
        alive = self.alive * (1 - self.field.finds[:, check])
        open_now: Flags = np.logical_or(self.open_now, self.field.needs[check])
        return replace(self, alive=alive, done=done, open_now=open_now)

    def results(self, check: int) -> Iterator[Point]:
        """The points after a check that did not find the cause, by what else it told."""
        here = self.after(check)
        tells = self.field.tells[check]
        for shows in product((True, False), repeat=len(tells)):
            weight = here.weight
            for told, show in zip(tells, shows, strict=True):
                weight = weight * (told if show else 1 - told)
            yield replace(here, weight=weight)


def minutes_in_order(point: Point) -> float:
    """Minutes still to go, times the chance to be here, by the most chance a minute.

    After each check the next is the one with the most chance to find the cause for each minute of
    it and its opening. What each check changes is taken off, instead of making every sum anew: a
    search looks here hundreds of times.
    """
    import numpy as np

    field, total = point.field, 0.0
    chance = start = point.chance
    left, gains, costs = point.weight * point.alive, point.gains.copy(), point.costs.copy()
    open_now = point.open_now
    while chance > NEGLIGIBLE * start:
        check = int((gains / costs).argmax())
        if gains[check] <= 0:
            break
        total += float(costs[check]) * chance
        machines, finds, finds_here = field.hits[check]
        found = left[machines] * finds
        left[machines] -= found
        chance -= float(found.sum())
        gains -= found @ finds_here
        gains[check] = 0
        opens = field.needs[check] & ~open_now
        costs -= field.needs[:, opens] @ field.opening[opens]
        open_now = np.logical_or(open_now, opens)
    return total


def minutes_with(point: Point, check: int, depth: int = 0, width: int = 8) -> float:
    """Minutes still to go, times the chance to be here, if a check is done first.

    depth: how many further checks are chosen by looking ahead, before going on in order. width:
    how many are weighed at each of them.
    """
    total = float(point.costs[check]) * point.chance
    return total + sum(best_minutes(each, depth, width) for each in point.results(check))


def best_minutes(point: Point, depth: int, width: int) -> float:
    """Minutes still to go, times the chance to be here, by the best check to do next."""
    least = minutes_in_order(point)
    if depth == 0 or least == 0:
        return least
    tried = (minutes_with(point, each, depth - 1, width) for each in worth_trying(point, width))
    return min([least, *tried])


def worth_trying(point: Point, width: int) -> list[int]:
    """The checks with most chance a minute to find the cause, and those that tell most a minute."""
    by_chance = (-point.gains / point.costs).argsort(kind="stable")
    found = [int(check) for check in by_chance[:width] if point.gains[check] > 0]
    telling = sorted(
        (-spread / float(point.costs[check]), check) for check, spread in _spreads(point)
    )
    return found + [check for _, check in telling[: max(width // 2, 2)] if check not in found]


def _spreads(point: Point) -> Iterator[tuple[int, float]]:
    """For each check that tells something, how far apart its result sets the causes."""
    here = point.weight * (point.alive - point.field.never)
    shares = here @ point.field.finds / max(float(here.sum()), 1e-300)
    for check, tells in enumerate(point.field.tells):
        if not tells or point.done[check]:
            continue
        spread = 0.0
        for told in tells:
            shown = here * told
            spread += float(abs(shown @ point.field.finds - shown.sum() * shares).sum())
        if spread > NEGLIGIBLE:
            yield check, spread


def doubt(point: Point) -> float:
    """Bits of doubt about which check will find the cause, times the chance to be here."""
    import numpy as np

    gains = point.gains[point.gains > 0]
    if not len(gains):
        return 0.0
    shares = gains / gains.sum()
    return float(-(shares * np.log2(shares)).sum()) * point.chance
