"""Which joints, trains and figures of a machine are named for a sum."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from shimstock.trade.machine.book import Book
from shimstock.workshop.find import Named, find_among
from shimstock.workshop.for_sums.held import Held
from shimstock.workshop.for_sums.things import FigureThing, JointThing
from shimstock.workshop.for_sums.train_thing import TrainThing
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed

Thing = JointThing | TrainThing | FigureThing


def named(held: Held, where: Sequence[str]) -> Iterator[Thing]:
    """The things that are named; a text that says which of the thing before it makes that one.

    Raises NotFound; Refused where a name is that of several things.
    """
    last: Thing | None = None
    for text in where:
        narrowed = last.narrowed(text) if last else None
        if narrowed is None and last is not None:
            yield last
        last = narrowed or _thing(held, text)
    if last is not None:
        yield last


def _thing(held: Held, text: str) -> Thing:
    book = held.book
    links = {
        f"{key} {number}": link
        for key, train in book.trains.items()
        for number, link in enumerate(train.links, start=1)
    }
    _one_kind(book, text)
    things: dict[str, Named] = {**links, **book.trains, **book.measures, **book.joints}
    key = find_among("joint, train or figure", text, things)
    if key in book.joints:
        return JointThing(held, key, text)
    if key in book.measures:
        return FigureThing(held, key, text)
    if key in book.trains:
        return TrainThing(held, key, text)
    train, _, number = key.rpartition(" ")
    return TrainThing(held, train, text, int(number) - 1)


def _one_kind(book: Book, text: str) -> None:
    kinds: dict[str, Mapping[str, object]] = {
        "joint": book.joints,
        "train": book.trains,
        "figure": book.measures,
    }
    bearing = [what for what, things in kinds.items() if text.strip() in things]
    if len(bearing) > 1:
        named = listed((f"a {what}" for what in bearing), "and")
        raise Refused([f"{text!r} names {named}; type the mark or the full name"])
