"""Joints that wait for one another, as bare numbers, and the order in which they can be opened."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from heapq import heapify, heappop, heappush

Alternative = frozenset[int]
Needs = tuple[tuple[Alternative, ...], ...]
"""Every entry must hold; it holds when all joints of one of its alternatives are open."""


@dataclass(frozen=True)
class Ladder:
    """What can be opened, at what cost, and what is wanted.

    cost: by joint, whole units of time to open and close it. needs: by joint. goal: a last rung
    that costs nothing, whose needs are what is wanted. opened: joints that stand open.
    """

    cost: tuple[int, ...]
    needs: Mapping[int, Needs]
    opened: frozenset[int]

    @property
    def goal(self) -> int:
        """The number of the rung that stands for what is wanted."""
        return len(self.cost)


def opening_order(
    needs: Mapping[int, Needs], opened: Collection[int], among: Iterable[int]
) -> list[int]:
    """Joints of `among` that can be opened one after another, the lowest number first.

    A joint that waits for itself, round a ring, never comes up.
    """
    start = frozenset(opened)
    left: dict[int, int] = {}
    waiting: dict[int, list[list[int]]] = defaultdict(list)
    for joint in among:
        if joint in start:
            continue
        left[joint] = 0
        for entry, alternatives in enumerate(needs[joint]):
            if any(alternative <= start for alternative in alternatives):
                continue
            left[joint] += 1
            for alternative in alternatives:
                missing = alternative - start
                cell = [len(missing), joint, entry]
                for other in missing:
                    waiting[other].append(cell)
    return _opened_in_turn(left, waiting)


def _opened_in_turn(left: dict[int, int], waiting: dict[int, list[list[int]]]) -> list[int]:
    ready = [joint for joint, unmet in left.items() if not unmet]
    heapify(ready)
    order: list[int] = []
    met: set[tuple[int, int]] = set()
    while ready:
        opened = heappop(ready)
        order.append(opened)
        for cell in waiting.pop(opened, ()):
            cell[0] -= 1
            _, joint, entry = cell
            if cell[0] or (joint, entry) in met:
                continue
            met.add((joint, entry))
            left[joint] -= 1
            if not left[joint]:
                heappush(ready, joint)
    return order


def one_after_another(
    needs: Mapping[int, Needs], opened: Collection[int], order: list[int]
) -> list[int]:
    """The same joints in an order that finishes one thing before it begins the next.

    needs: by joint. order: one that works, as `opening_order` gives it, its last the one that all
    the others are for. Goes back from that one: what it needs first, each with all that is before
    it, as the book lists it.
    """
    turn = {joint: number for number, joint in enumerate(order)}
    turn |= dict.fromkeys(opened, -1)
    placed: dict[int, None] = {}
    ahead = [(order[-1], False)] if order else []
    while ahead:
        joint, ready = ahead.pop()
        if joint in placed or turn[joint] < 0:
            continue
        if ready:
            placed[joint] = None
            continue
        ahead.append((joint, True))
        for entry in reversed(needs[joint]):
            way = next(way for way in entry if all(_earlier(turn, k, joint) for k in way))
            ahead.extend((other, False) for other in sorted(way, reverse=True))
    return list(placed)


def _earlier(turn: Mapping[int, int], one: int, other: int) -> bool:
    return one in turn and turn[one] < turn[other]
