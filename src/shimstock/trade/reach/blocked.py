"""Says which joints block one another where nothing leads to a target."""

from __future__ import annotations

from itertools import pairwise

from shimstock.trade.machine.book import Book
from shimstock.trade.reach.ladder import Ladder, Needs, opening_order


class NoWay(ValueError):
    """Nothing that can be opened leads to what is wanted."""


def no_way(book: Book, ladder: Ladder, wanted: str) -> NoWay:
    """The error that names the joints that wait for one another."""
    keys = list(book.joints)
    can = ladder.opened.union(opening_order(ladder.needs, ladder.opened, ladder.needs))
    chain = [ladder.goal]
    while chain.count(chain[-1]) < 2:
        chain.append(_first_shut(ladder.needs[chain[-1]], can))
    ring = [keys[joint] for joint in chain[chain.index(chain[-1]) :]]
    said = ", ".join(f"{a} waits for {b}" for a, b in pairwise(ring))
    return NoWay(f"there is no way in to {wanted}: {said}; correct 'after' of one of them")


def _first_shut(needs: Needs, can: frozenset[int]) -> int:
    for entry in needs:
        if not any(alternative <= can for alternative in entry):
            return min(min(alternative - can) for alternative in entry)
    raise AssertionError("a joint that cannot be opened waits for another that cannot")
