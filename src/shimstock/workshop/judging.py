"""The one place where acts ask the trade what readings mean, and store the answer whole."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from math import isclose
from statistics import median

import shimstock
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import FigureKey
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.judge import Judged
from shimstock.trade.measure.reading import Reading
from shimstock.trade.measure.take import in_unit, understand
from shimstock.trade.measure.verdicts import verdicts
from shimstock.trade.numbers.instruments import Instrument, named
from shimstock.trade.numbers.quantity import convert
from shimstock.workshop.books import book_of, knows_figure
from shimstock.workshop.ledger import Pen
from shimstock.workshop.models import Machine, ReadingRow, VerdictRow

Opinions = Mapping[FigureKey, Judged]
"""What today's code says of each figure that can be judged."""

CLOSE = 1e-9
"""Relative difference below which two values are the same, computed on two machines."""


_SAID = ("verdict", "says", "unit", "settles", "remedy", "beyond", "stand_in")
_NUMBERS = ("value", "expanded", "p_within")


def readings_of(machine: Machine) -> list[ReadingRow]:
    """The readings that count: neither superseded nor withdrawn, of what the book knows."""
    book = book_of(machine)
    rows = machine.readings.filter(superseded=False, withdrawn=False)
    return [row for row in rows if knows_figure(book, row.figure, row.piece)]


def understood(
    book: Book,
    figure: str,
    typed: Sequence[str],
    *,
    instrument: str | Instrument,
    meant: bool,
    each: int,
    others: Iterable[ReadingRow],
) -> Reading:
    """Understand what was typed for a figure.

    instrument: it or its name; "" for the one in the book.
    each: how many readings every number is the mean of.
    others: readings of the same figure, which say what to expect.
    Raises NotUnderstood.
    """
    entry = book.measures[figure]
    gauge = _gauge(instrument, entry.measured_in)
    read = [value for row in others for value in trade_reading(book, row).values if value]
    return understand(
        figure,
        entry,
        typed,
        instrument=gauge,
        meant=meant,
        near=median(read) if read else None,
        each=each,
    )


def trade_reading(book: Book, row: ReadingRow) -> Reading:
    """A stored reading as the trade knows it, in the unit that the book has now."""
    unit = book.measures[row.figure].measured_in
    values = tuple(None if each is None else convert(each, row.unit, unit) for each in row.values)
    gauge = in_unit(Instrument(**row.instrument), unit)
    return Reading(row.figure, tuple(row.typed), values, unit, gauge, row.meant, row.each)


def opinions(
    book: Book, rows: Iterable[ReadingRow], only: Collection[str] | None = None
) -> Opinions:
    """Judge readings by a book with today's code; only: these figures alone."""
    readings = {(row.figure, row.piece, Stage(row.stage)): trade_reading(book, row) for row in rows}
    return verdicts(book, readings, only).judged


def verdict_rows(machine: Machine) -> dict[FigureKey, VerdictRow]:
    """The verdicts that count now."""
    rows = machine.verdicts.filter(current=True)
    return {(row.figure, row.piece, Stage(row.stage)): row for row in rows}


def differing(rows: Mapping[FigureKey, VerdictRow], found: Opinions) -> list[FigureKey]:
    """Figures whose stored verdict is not what was found."""
    keys = list(dict.fromkeys([*rows, *found]))
    return [key for key in keys if not _same(rows.get(key), found.get(key))]


def store(
    pen: Pen,
    keys: Sequence[FigureKey],
    rows: Mapping[FigureKey, VerdictRow],
    found: Opinions,
    *,
    keep_accepted: bool,
) -> list[VerdictRow]:
    """Put what was found in place of the verdicts stored; those stay, no longer current.

    keep_accepted: a person's decision stays with a verdict whose word stays the same.
    """
    written = []
    for key in keys:
        if (old := rows.get(key)) is not None:
            old.current = False
            pen.save(old)
        if (judged := found.get(key)) is not None:
            row = _row(pen, key, judged)
            if keep_accepted and old is not None and old.verdict == row.verdict:
                row.accepted_reason = old.accepted_reason
                row.accepted_by = old.accepted_by
                row.accepted_at = old.accepted_at
            pen.save(row)
            written.append(row)
    return written


def rejudge(pen: Pen, book: Book) -> list[FigureKey]:
    """Judge all readings of the act's machine by a book and store what differs."""
    rows, readings = verdict_rows(pen.machine), readings_of(pen.machine)
    found = opinions(book, readings)
    pen.rests_on.update(row.place for row in readings)
    keys = differing(rows, found)
    store(pen, keys, rows, found, keep_accepted=True)
    return keys


def _row(pen: Pen, key: FigureKey, judged: Judged) -> VerdictRow:
    figure, piece, stage = key
    return VerdictRow(
        machine=pen.machine,
        figure=figure,
        piece=piece,
        stage=stage,
        verdict=judged.verdict or "",
        says=judged.says,
        value=judged.value,
        unit=judged.unit,
        p=judged.p_within,
        data=judged.as_data(),
        at=pen.at,
        code_version=shimstock.__version__,
    )


def _same(row: VerdictRow | None, judged: Judged | None) -> bool:
    """Whether a stored verdict is what is found now, to the last line that is shown of it."""
    if row is None or judged is None:
        return row is None and judged is None
    kept = Judged.from_data(row.data)
    words = all(getattr(kept, name) == getattr(judged, name) for name in _SAID)
    near = all(_near(getattr(kept, name), getattr(judged, name)) for name in _NUMBERS)
    column = (row.verdict, row.says) == (judged.verdict or "", judged.says)
    near = near and _near(row.p, judged.p_within) and _near(row.value, judged.value)
    return column and words and near and kept.working.shown() == judged.working.shown()


def _near(a: float | None, b: float | None) -> bool:
    if a is None or b is None:
        return a is b
    return isclose(a, b, rel_tol=CLOSE, abs_tol=1e-12)


def _gauge(instrument: str | Instrument, unit: str) -> Instrument | None:
    if isinstance(instrument, str):
        return named(instrument, unit) if instrument.strip() else None
    return instrument
