"""Which parameters of a sum the things that were named fill."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from shimstock.trade.numbers.quantity import kind
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.sums.declare import Input, Of, Sum
from shimstock.trade.sums.typed import Origin
from shimstock.workshop.for_sums.naming import Thing
from shimstock.workshop.for_sums.things import FigureThing
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed

Found = dict[str, Origin]
"""By parameter a text as it would be typed, and where it comes from."""


def of_things(things: Sequence[Thing], sum_: Sum, asked: Sequence[Input]) -> Found:
    """What the things that were named give, each what those before it have not.

    Raises Refused for a thing that the sum takes nothing from.
    """
    found: Found = {}
    for thing in things:
        given = _from(thing, sum_, open_for(asked, found))
        if not given and not _known(thing, sum_):
            raise _useless(thing, sum_)
        found |= given
    return found


def open_for(asked: Sequence[Input], found: Collection[str]) -> list[Input]:
    """The parameters that nothing was found for yet; a word fills only the first that has it."""
    used = {one.found for one in asked if one.name in found}
    left: list[Input] = []
    for one in asked:
        if one.name not in found and (not one.found or one.found not in used):
            left.append(one)
            used.add(one.found)
    return left


def _from(thing: Thing, sum_: Sum, wanted: Sequence[Input]) -> Found:
    """What one thing that was named gives."""
    words = _words(sum_)
    if isinstance(thing, FigureThing):
        one = _filled_by(thing, wanted, words)
        return {one.name: thing.value(one)} | _limit(thing, wanted) if one else {}
    given = {one.name: thing.give(one, words) for one in wanted}
    return {name: origin for name, origin in given.items() if origin is not None}


def _limit(thing: FigureThing, wanted: Sequence[Input]) -> Found:
    """The limit that the book sets the figure, where the sum looks for it."""
    looks = [one.name for one in wanted if one.found == f"limit of {thing.gives}"]
    limit = thing.limit if looks else None
    return dict.fromkeys(looks, limit) if limit else {}


def _filled_by(thing: FigureThing, wanted: Sequence[Input], words: Sequence[str]) -> Input | None:
    """The parameter that a figure is read for. Raises Refused where it could be several.

    The one that looks for what the figure gives; else the only one still needed that looks for
    nothing by name and measures the same. A drum never goes where a lining is looked for.
    """
    if thing.gives in words:
        return next((one for one in wanted if one.found == thing.gives), None)
    measures = kind(thing.held.book.measures[thing.key].measured_in)
    fitting = [one for one in wanted if one.needed and not one.found]
    fitting = [one for one in fitting if _measures(one) == measures]
    if len(fitting) > 1:
        options = [one.option for one in fitting]
        could = f"{thing.typed} could be {listed(options, 'or')}"
        raise Refused([f"{could}; type all of them but one"])
    return fitting[0] if fitting else None


def _measures(one: Input) -> str:
    """What a parameter measures; "" where it is no number."""
    if not isinstance(one.takes, Of):
        return ""
    unit = find(one.takes.in_unit("mm") or "count")
    return unit.kind if unit else ""


def _known(thing: Thing, sum_: Sum) -> bool:
    """Whether the sum looks for anything of such a thing, even where the book has none of it."""
    words = (thing.gives,) if isinstance(thing, FigureThing) else thing.words
    return any(word in words for word in _words(sum_))


def _words(sum_: Sum) -> list[str]:
    """What the sum looks for in a machine."""
    return list(dict.fromkeys(one.found for one in sum_.inputs if one.found))


def _useless(thing: Thing, sum_: Sum) -> Refused:
    words = _words(sum_)
    takes = f"it looks for {listed(words)}" if words else "its values are typed"
    return Refused([f"{sum_.name} takes nothing from {thing.typed}: {takes}; leave it out"])
