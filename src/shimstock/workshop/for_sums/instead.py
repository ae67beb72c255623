"""What can be said in two ways, where a sum wants one of them."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from shimstock.trade.sums.declare import Input, Sum

WAYS = (("bore", "stroke", "cylinders"), ("displacement",))
"""The size of an engine: what is measured goes before what is printed."""


def said_otherwise(sum_: Sum, typed: Collection[str], found: Collection[str]) -> set[str]:
    """Parameters that are not wanted, because the same is said by others.

    typed, found: names of the parameters that were typed, and that the machine has something for.
    """
    ways = [[one for one in sum_.inputs if _word(one) in words] for words in WAYS]
    if not all(ways) or any(one.needed for way in ways for one in way):
        return set()
    kept = [way for way in ways if any(one.name in typed for one in way)]
    kept = kept or [way for way in ways if _whole(way, found)][:1] or ways
    return {one.name for way in ways if way not in kept for one in way}


def _word(one: Input) -> str:
    return one.found or one.name.replace("_", " ")


def _whole(way: Sequence[Input], found: Collection[str]) -> bool:
    """Whether all is there that has no value of its own to fall back on."""
    return all(one.name in found for one in way if one.default is None)
