"""What could still be read along a train, what it costs, and how it is said."""

from __future__ import annotations

from collections.abc import Sequence

from shimstock.trade.machine.book import Book, Link, Train
from shimstock.trade.measure.chain.next_reading import Offer
from shimstock.trade.measure.chain.played import Next
from shimstock.trade.measure.chain.told import Felt, Read, Told
from shimstock.trade.measure.chain.ways import ON_THE_LINK, TO_ROCK, Ways, way_to
from shimstock.trade.measure.named import in_sentence
from shimstock.trade.measure.tip import gauge_named
from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.quantity import convert


def can_be_read(train: Train, link: Link) -> bool:
    """Whether the play of a link can be read on the link itself."""
    return not link.only_by_holding and read_on_it(train, link)


def read_on_it(train: Train, link: Link) -> bool:
    """Whether a link's figure is read on the link, and not one that is read at the end."""
    at_end = {train.figure, *(each.hold.figure for each in train.links if each.hold)}
    return link.figure not in at_end


def offers(
    book: Book, train: Train, told: Sequence[Told], gauge: Instrument, ways: Ways
) -> list[Offer]:
    """What could still be read: a hold that was not rocked, a link that was not read itself.

    The whole comes before everything else: without too much of it nothing needs to be parted.
    """
    unit = book.measures[train.figure].measured_in
    felt = {each.link for each in told if isinstance(each, Felt)}
    read = {each.link for each in told if isinstance(each, Read)}
    every = []
    for at, link in enumerate(train.links):
        figure = book.measures[link.figure]
        if at not in felt and link.hold:
            way = way_to(book, link.hold.open, ways)
            every.append(Offer(Felt(at, 0.0, gauge.u(0.0)), way.minutes + TO_ROCK))
        if at not in read and figure.with_ and can_be_read(train, link):
            one = gauge_named(figure.with_, figure.measured_in)
            u = convert(one.u(0.0), figure.measured_in, unit)
            way = way_to(book, figure.of, ways)
            every.append(Offer(Read(at, 0.0, u), way.minutes + ON_THE_LINK))
    return every if told else every[:1]


def next_of(book: Book, train: Train, offer: Offer, ways: Ways) -> Next:
    """An offer as it is said, with what is opened for it."""
    at_end = isinstance(offer.told, Felt)
    link = train.links[offer.told.link]
    figure = book.measures[link.figure]
    place = (link.hold.open if link.hold else None) if at_end else figure.of
    if not at_end:
        do = f"{figure.name}, {figure.with_}"
    elif offer.told.link == 0:
        do = f"the whole, {in_sentence(book.measures[train.figure].name)}"
    else:
        do = f"hold the {link.hold.what if link.hold else ''}, and rock again"
    says = f"Next: {do} ({_opening(book, place, ways)})"
    way = way_to(book, place, ways)
    return Next(offer.told.link, at_end, says, place, way, offer.minutes)


def _opening(book: Book, place: str | None, ways: Ways) -> str:
    """What is opened for a reading, and how long it takes as the machine stands."""
    way = way_to(book, place, ways)
    if place is None or not way.minutes:
        return "nothing to open"
    joint = book.joints.get(place)
    name = joint.name if joint else f"way in to {in_sentence(book.parts[place].name)}"
    beside = "" if place in ways else ", beside what is in the way"
    return f"{name}: {way.opening:.0f} min to open, {way.closing:.0f} min to close{beside}"
