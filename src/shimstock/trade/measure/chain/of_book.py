"""From a train of the book and what was read of it to the play of its links."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from shimstock.trade.machine.book import Book, Figure, Train
from shimstock.trade.measure.chain.expected import Chain
from shimstock.trade.measure.chain.link_play import plays
from shimstock.trade.measure.chain.next_reading import best_next
from shimstock.trade.measure.chain.of_figures import expected_of
from shimstock.trade.measure.chain.offers import next_of, offers, read_on_it
from shimstock.trade.measure.chain.played import ChainPlay
from shimstock.trade.measure.chain.posterior import Contradiction
from shimstock.trade.measure.chain.said import misfit, played
from shimstock.trade.measure.chain.told import Felt, Read, Told
from shimstock.trade.measure.chain.ways import Ways
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.play import gain_of
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.instruments import Instrument


def chain_play(
    book: Book,
    train: Train,
    holds: Sequence[Reading | None],
    *,
    own: Mapping[str, Measured],
    extra: float,
    gauge: Instrument,
    ways: Ways,
) -> ChainPlay:
    """The play of each link of a train by everything that was read of it, and what to read next.

    holds: what was read at the end with each link's shaft held, in the unit of the train's figure.
    own: readings on links themselves, by their figure. extra: how much too thick the gasket is.
    gauge: what the next hold is read with. ways: what it costs to get at joints and parts.
    """
    unit = book.measures[train.figure].measured_in
    expected = expected_of(book, train, extra)
    if expected is None:
        whole = book.measures[train.figure].name
        return ChainPlay(trouble=f"type a limit for each link, or for {whole}: the book has none")
    gains = tuple(gain_of(train, at, unit) for at in range(len(train.links)))
    chain = Chain(expected, gains)
    told: list[Told] = [*_felt(holds), *_read(book, train, own, unit)]
    try:
        found = plays(chain, told)
        well = _whole_is_well(book.measures[train.figure], holds)
        open_ones = offers(book, train, told, gauge, ways)
        following = None if well else best_next(chain, told, open_ones)
    except Contradiction as wrong:
        return ChainPlay(trouble=misfit(train, wrong.told, unit))
    links = tuple(played(book, train, at, each, chain, told) for at, each in enumerate(found))
    best = next_of(book, train, following.offer, ways) if following else None
    return ChainPlay(links, best)


def _felt(holds: Sequence[Reading | None]) -> Iterator[Felt]:
    for at, reading in enumerate(holds):
        if reading is not None:
            taken = [value for _, value in reading.taken]
            value = sum(taken) / len(taken)
            yield Felt(at, value, reading.u(value, len(taken)))


def _read(book: Book, train: Train, own: Mapping[str, Measured], unit: str) -> Iterator[Read]:
    for at, link in enumerate(train.links):
        if link.figure in own and read_on_it(train, link):
            got = own[link.figure].told_in(unit)
            yield Read(at, got.value, got.u)


def _whole_is_well(figure: Figure, holds: Sequence[Reading | None]) -> bool:
    """Whether nothing but the whole was felt, and it is proven to be within its limit."""
    whole, *others = holds
    limit = figure.allowed.high if figure.allowed else None
    if whole is None or limit is None or any(others):
        return False
    (felt,) = _felt([whole])
    return felt.value + 2 * felt.u <= limit
