"""Takes out of a ladder what cannot matter, so that only the true choices are left.

No cheapest way is lost: only joints that no way needs, joints that every way needs, and
alternatives that open whatever a better one opens, are taken out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from shimstock.trade.reach.ladder import Alternative, Ladder, Needs, opening_order


@dataclass(frozen=True)
class Choices:
    """What is left of a ladder.

    needs: by joint still in question, and the goal if it is not yet reached. sure: joints that
    every way opens, in order. guess: joints of one good way among those in question.
    weighed: how many alternatives stood against each other among the joints that matter.
    """

    needs: Mapping[int, Needs]
    sure: tuple[int, ...]
    guess: frozenset[int]
    weighed: int


def choices(ladder: Ladder) -> Choices | None:
    """The true choices of a ladder; None where the goal cannot be reached at all."""
    needs = _relevant(ladder.needs, ladder.goal, ladder.opened)
    sure: list[int] = []
    weighed: int | None = None
    while True:
        opened = ladder.opened.union(sure)
        order = opening_order(needs, opened, needs)
        if ladder.goal not in order:
            return None
        needs = _relevant(_stripped(needs, opened, order), ladder.goal, opened)
        order = [joint for joint in order if joint in needs]
        if weighed is None:
            weighed = _alternatives(needs)
        must = _must(needs, order)
        certain = [joint for joint in _members(must[ladder.goal]) if joint in needs]
        found = opening_order(needs, opened, certain)
        if ladder.goal in found:
            return Choices({}, (*sure, *found[: found.index(ladder.goal)]), frozenset(), weighed)
        one = _one_way(needs, order, ladder.cost)
        fewer = {joint: _undominated(needs[joint], must, one) for joint in needs}
        if not found and fewer == needs:
            guess = frozenset(_members(one[ladder.goal])) - {ladder.goal}
            return Choices(needs, tuple(sure), guess, weighed)
        sure += found
        needs = fewer


def _alternatives(needs: Mapping[int, Needs]) -> int:
    return sum(len(entry) for entries in needs.values() for entry in entries if len(entry) > 1)


def _relevant(needs: Mapping[int, Needs], goal: int, opened: frozenset[int]) -> dict[int, Needs]:
    """Only what can matter on some way to the goal."""
    seen: dict[int, Needs] = {}
    ahead = [goal]
    while ahead:
        joint = ahead.pop()
        if joint in seen or joint in opened:
            continue
        seen[joint] = needs[joint]
        for entry in needs[joint]:
            for alternative in entry:
                ahead.extend(alternative)
    return dict(sorted(seen.items()))


def _stripped(
    needs: Mapping[int, Needs], opened: frozenset[int], order: list[int]
) -> dict[int, Needs]:
    """Without entries that hold already and alternatives that can never be opened."""
    can = opened.union(order)
    return {joint: tuple(_entries(needs[joint], opened, can)) for joint in order}


def _entries(
    entries: Needs, opened: frozenset[int], can: frozenset[int]
) -> Iterator[tuple[Alternative, ...]]:
    for entry in entries:
        left = [alternative - opened for alternative in entry if alternative <= can]
        if all(left):
            yield tuple(a for i, a in enumerate(left) if not _larger(a, i, left))


def _larger(alternative: Alternative, at: int, others: list[Alternative]) -> bool:
    """True where another alternative asks for less, or for the same and stands earlier."""
    return any(
        other < alternative or (other == alternative and i < at) for i, other in enumerate(others)
    )


def _must(needs: Mapping[int, Needs], order: list[int]) -> dict[int, int]:
    """For each joint, as bits, the joints that every way to it opens, itself included.

    The largest answer that agrees with itself, found by starting from everything.
    """
    everything = (1 << (max(needs) + 1)) - 1
    must = dict.fromkeys(needs, everything)
    changed = True
    while changed:
        changed = False
        for joint in order:
            bits = 1 << joint
            for entry in needs[joint]:
                common = everything
                for alternative in entry:
                    common &= _union(must, alternative)
                bits |= common
            if bits != must[joint]:
                must[joint] = bits
                changed = True
    return must


def _one_way(needs: Mapping[int, Needs], order: list[int], cost: tuple[int, ...]) -> dict[int, int]:
    """For each joint, as bits, the joints of one way to it that looks cheap."""
    way: dict[int, int] = {}
    price: dict[int, int] = {}
    for joint in order:
        bits, total = 1 << joint, cost[joint] if joint < len(cost) else 0
        for entry in needs[joint]:
            known = [a for a in entry if way.keys() >= a]
            best = min(known, key=lambda a: sum(price[other] for other in a))
            bits |= _union(way, best)
            total += sum(price[other] for other in best)
        way[joint], price[joint] = bits, total
    return way


def _undominated(entries: Needs, must: dict[int, int], one: dict[int, int]) -> Needs:
    """Without alternatives that surely open all that some way to another one opens."""
    return tuple(_kept(entry, must, one) for entry in entries)


def _kept(
    entry: tuple[Alternative, ...], must: dict[int, int], one: dict[int, int]
) -> tuple[Alternative, ...]:
    kept = list(entry)
    for alternative in entry:
        surely = _union(must, alternative)
        others = (other for other in kept if other is not alternative)
        if any(not _union(one, other) & ~surely for other in others):
            kept.remove(alternative)
    return tuple(kept)


def _union(bits: Mapping[int, int], joints: Alternative) -> int:
    total = 0
    for joint in joints:
        total |= bits[joint]
    return total


def _members(bits: int) -> Iterator[int]:
    while bits:
        lowest = bits & -bits
        yield lowest.bit_length() - 1
        bits ^= lowest
