"""What was worked out of a fault, kept for when exactly the same is asked again.

Much of what people do at a machine, such as reading something else, leaves a search as it was. What
is kept goes by all that it rests on, value for value, so that nothing can make it old.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Collection, Hashable, Mapping
from dataclasses import fields, is_dataclass
from threading import Lock
from typing import Any, ParamSpec, TypeVar, cast

Of = ParamSpec("Of")
Found = TypeVar("Found")

KEPT = 512
"""How many answers are kept; a search that is looked at has five."""

_kept: OrderedDict[Hashable, Any] = OrderedDict()
_hold = Lock()


def worked_out(work: Callable[Of, Found], /, *given: Of.args, **named: Of.kwargs) -> Found:
    """What a function of plain values gives, worked out where the same was not asked before.

    given, named: what it is given, and all that it goes by. What it raises is raised each time. Who
    gets an answer leaves it as it is, since others get the same one.
    """
    asked = (work, by_value(given), by_value(named))
    with _hold:
        if asked in _kept:
            _kept.move_to_end(asked)
            found: Found = _kept[asked]
            return found
    found = work(*given, **named)
    with _hold:
        _kept[asked] = found
        while len(_kept) > KEPT:
            _kept.popitem(last=False)
    return found


def by_value(given: Any) -> Hashable:
    """Plain values as a key: the same for two that are the same, in the same order.

    A sign that was seen is not one that was read as 1, though Python calls them equal.

    >>> by_value({"rocks": True}) == by_value({"rocks": 1.0})
    False
    """
    kind = type(given)
    if kind is float or kind is str or kind is frozenset:
        return cast(Hashable, given)
    if isinstance(given, Mapping):
        return tuple([(key, by_value(value)) for key, value in given.items()])
    if isinstance(given, Collection):
        return tuple([by_value(each) for each in given])
    if is_dataclass(given):
        return (kind, *[by_value(getattr(given, each.name)) for each in fields(given)])
    return (kind, given)


def forget() -> None:
    """Forget what was worked out: for tests."""
    with _hold:
        _kept.clear()
