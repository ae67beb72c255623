"""What was read at the end of a train with one shaft held after another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from shimstock.trade.machine.book import Book, Train
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.reading import Reading
from shimstock.trade.measure.take import GAPS, in_unit
from shimstock.trade.measure.verdicts import Readings, measure
from shimstock.trade.numbers.instruments import Instrument, good_to, named
from shimstock.trade.numbers.quantity import NotUnderstood, convert, parse

Tip = Reading | Sequence[str] | None
"""A hold's reading, or its numbers as typed; None where that shaft was not held."""


def tip_readings(
    book: Book, train_key: str, readings: Readings, stage: Stage = Stage.FOUND
) -> list[Reading | None]:
    """The readings of a train's figure and of its holds' figures, in the order that `rock` takes.

    readings: everything that was read on the machine.
    """
    train = book.trains[train_key]
    found = []
    for key in hold_figures(train):
        found.append(readings.get((key, piece_of(book, train, key), stage)) if key else None)
    return found


def hold_figures(train: Train) -> list[str | None]:
    """The figure read at the end with each link's shaft held; None where the book names none."""
    later = (link.hold.figure if link.hold else None for link in train.links[1:])
    return [train.figure, *later]


def piece_of(book: Book, train: Train, figure: str) -> str:
    """Which piece a figure of a train is read on."""
    pieces = book.parts[book.measures[figure].of].instances
    return train.piece if train.piece in pieces else pieces[0]


def own_readings(
    book: Book, train_key: str, readings: Readings, stage: Stage = Stage.FOUND
) -> dict[str, Measured]:
    """What was read on a train's links themselves, by their figure.

    readings: everything that was read on the machine.
    """
    train = book.trains[train_key]
    found = {}
    for link in train.links:
        piece = piece_of(book, train, link.figure)
        got = measure(book, link.figure, readings, piece, stage)
        if got is not None:
            found[link.figure] = got
    return found


def holds(
    book: Book, train: Train, tips: Sequence[Tip], within: float | None
) -> Iterator[Reading | None]:
    """One reading for each link of the train, in the unit of the train's figure.

    within: the ± of one reading, k = 2; without it, the instrument that the book names.
    Raises ValueError for more holds than links, NotUnderstood for text that cannot be read.
    """
    if len(tips) > len(train.links):
        raise ValueError(
            f"{len(tips)} holds were read, but {train.name} has {len(train.links)} links"
        )
    figure = book.measures[train.figure]
    unit = figure.measured_in
    gauge = gauge_of(book, train, within)
    for tip in (*tips, *[None] * (len(train.links) - len(tips))):
        if isinstance(tip, Reading):
            yield _brought_in(tip, unit, None if within is None else gauge)
        else:
            yield _typed(train.figure, figure.name, tip or (), unit, gauge)


def gauge_of(book: Book, train: Train, within: float | None) -> Instrument:
    """What the end of a train is read with.

    within: the ± of one reading, k = 2; without it, the instrument that the book names.
    """
    figure = book.measures[train.figure]
    if within is not None:
        return good_to(within, figure.measured_in)
    return gauge_named(figure.with_ or "", figure.measured_in)


def gauge_named(text: str, unit: str) -> Instrument:
    """The instrument that a book's text names, or else a rule."""
    try:
        return named(text, unit)
    except NotUnderstood:
        return named("rule", unit)


def _brought_in(reading: Reading, unit: str, gauge: Instrument | None) -> Reading:
    values = tuple(
        None if value is None else convert(value, reading.unit, unit) for value in reading.values
    )
    instrument = gauge or in_unit(reading.instrument, unit)
    return replace(reading, values=values, unit=unit, instrument=instrument)


def _typed(
    key: str, name: str, typed: Sequence[str], unit: str, gauge: Instrument
) -> Reading | None:
    texts = tuple(text for text in typed if text.strip() not in GAPS)
    if not texts:
        return None
    values = tuple(parse(text, unit=unit, what=name).value for text in texts)
    return Reading(key, texts, values, unit, gauge)
