"""Readings: taken, judged at once, and what is beyond a limit accepted by a person."""

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from datetime import datetime

from django.db import IntegrityError

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import FigureKey
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.in_all import read_along
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.words import word_of
from shimstock.trade.numbers.instruments import Instrument
from shimstock.workshop.books import book_of
from shimstock.workshop.find import find_figure, find_machine, find_piece
from shimstock.workshop.judging import (
    Opinions,
    opinions,
    readings_of,
    store,
    understood,
    verdict_rows,
)
from shimstock.workshop.ledger import Pen, sent_before, writing
from shimstock.workshop.models import DiaryEntry, Machine, ReadingRow, VerdictRow
from shimstock.workshop.places import MACHINE, reading_place
from shimstock.workshop.refused import Refused
from shimstock.workshop.rows import row_named
from shimstock.workshop.wording import figure_named, one_word

MOST_READINGS = 100
"""As many as one number may be the mean of; more than that nobody takes."""


@dataclass(frozen=True)
class TookReading:
    """A reading as it was stored, and every verdict that changed with it."""

    entry: DiaryEntry
    reading: ReadingRow
    verdicts: tuple[VerdictRow, ...]
    repeated: bool = False
    """The same sending had been stored before; nothing was stored now."""


@dataclass(frozen=True)
class _Sent:
    """What one sending says."""

    machine: str | Machine
    figure: str
    piece: str
    stage: str
    typed: tuple[str, ...]
    instrument: str | Instrument
    meant: bool
    each: int


def take_reading(
    *,
    machine: str | Machine,
    figure: str,
    typed: str | Sequence[str],
    who: str,
    piece: str = "",
    stage: str = Stage.FOUND,
    instrument: str | Instrument = "",
    meant: bool = False,
    each: int = 1,
    at: datetime | None = None,
    client_key: str | None = None,
) -> TookReading:
    """Store what was typed, what was understood, and every verdict that changes with it.

    figure: a figure or setting. typed: the numbers, in the order of the book's places.
    stage: as found, or as finished. instrument: its name; the book's for the figure if not given.
    meant: keep numbers that look like a slip.
    each: how many readings every number is the mean of, 1 to 100.
    client_key: what a sender that may send twice calls this sending; it is stored once.
    An earlier reading of the same figure, piece and stage stays on record, superseded.
    Raises NotUnderstood for what was typed, NotFound for an unknown name, Refused for a mean of too
    few or too many readings.
    """
    texts = (typed,) if isinstance(typed, str) else tuple(typed)
    sent = _Sent(machine, figure, piece, stage, texts, instrument, meant, _counted(each))
    if (entry := sent_before(client_key)) is not None:
        return _as_stored(entry, sent)
    try:
        with writing("read", who=who, machine=machine, at=at, client_key=client_key) as pen:
            row, older = _new_reading(pen, sent)
            verdicts = _supersede(pen, older, row)
            pen.says = _sentence(pen, row, verdicts)
    except IntegrityError:
        if (entry := sent_before(client_key)) is not None:  # the other sending was quicker
            return _as_stored(entry, sent)
        raise
    return TookReading(pen.entry, row, tuple(verdicts))


def accept_verdict(
    *,
    machine: str | Machine,
    figure: str,
    reason: str,
    who: str,
    piece: str = "",
    at: datetime | None = None,
) -> DiaryEntry:
    """Accept the verdict that counts now, although the figure is not within its limit.

    piece: which one; "together" for how far the several differ.
    reason: why it may stay; a verdict beyond a limit needs a person, a reason and a date.
    Raises Refused without a reason or where there is nothing to accept.
    """
    with writing("accept", who=who, machine=machine, at=at) as pen:
        key = find_figure(pen.book, figure)
        which = _which(pen, key, piece)
        name = figure_named(pen.book, key, which)
        if not reason.strip():
            raise Refused([f"{name} cannot be accepted without a reason: say why it may stay."])
        row = _latest(pen, key, which)
        if row is None:
            raise Refused([f"{name} has no verdict yet: take a reading first."])
        if row.verdict in (Verdict.GOOD, Verdict.SERVICEABLE):
            raise Refused([f"{name} is {row.verdict}: there is nothing to accept."])
        row.accepted_reason, row.accepted_by, row.accepted_at = reason.strip(), pen.who, pen.at
        pen.save(row)
        pen.says = f"Accepted {name}, {_word(pen, row)}: {row.accepted_reason}"
    return pen.entry


def _counted(each: int) -> int:
    if not 1 <= each <= MOST_READINGS:
        raise Refused([f"A number cannot be the mean of {each} readings: 1 to {MOST_READINGS}."])
    return each


def _new_reading(pen: Pen, sent: _Sent) -> tuple[ReadingRow, list[ReadingRow]]:
    """The reading, not yet saved, and those that counted until now."""
    key = find_figure(pen.book, sent.figure)
    entry = pen.book.measures[key]
    older = readings_of(pen.machine)
    others = [row for row in older if row.figure == key]
    read = understood(
        pen.book, key, sent.typed,
        instrument=sent.instrument, meant=sent.meant, each=sent.each, others=others,
    )  # fmt: skip
    row = ReadingRow(
        machine=pen.machine,
        figure=key,
        piece=find_piece(pen.book, entry.of, sent.piece),
        stage=one_word(Stage, sent.stage, "stage"),
        typed=list(read.typed),
        values=list(read.values),
        unit=read.unit,
        instrument=asdict(read.instrument),
        meant=sent.meant,
        each=sent.each,
        by=pen.who,
        at=pen.at,
    )
    return row, older


def _supersede(pen: Pen, older: list[ReadingRow], new: ReadingRow) -> list[VerdictRow]:
    """Save the new reading in place of an older one, and every verdict that it changes."""
    staying = [row for row in older if row.place != new.place]
    for row in older:
        if row.place == new.place:
            row.superseded = True
            pen.save(row)
    pen.save(new)
    pen.rests_on.add(MACHINE)  # its book
    resting = _resting_on(pen.book, new.figure)
    before = opinions(pen.book, older, resting)
    after = opinions(pen.book, [*staying, new], resting)
    own = (new.figure, new.piece, Stage(new.stage))
    keys = [key for key in {**before, **after} if _changed(before, after, key)]
    keys = keys if own in keys else [own, *keys]
    return store(pen, keys, verdict_rows(pen.machine), after, keep_accepted=False)


def _resting_on(book: Book, figure: str) -> set[str]:
    """A figure, those that are worked out from it, and the whole play of a chain it tells apart."""
    worked_out = (
        key for key, each in book.measures.items() if each.derive and figure in each.derive.sources
    )
    whole = (train.figure for train in book.trains.values() if figure in read_along(train))
    return {figure, *worked_out, *whole}


def _changed(before: Opinions, after: Opinions, key: FigureKey) -> bool:
    """Whether a verdict changes, or at least the numbers it is reached by."""
    old, new = before.get(key), after.get(key)
    return old != new or (old is not None and new is not None and old.working != new.working)


def _sentence(pen: Pen, row: ReadingRow, verdicts: list[VerdictRow]) -> str:
    name = figure_named(pen.book, row.figure, row.piece)
    own = [each for each in verdicts if (each.figure, each.piece) == (row.figure, row.piece)]
    word = f": {_word(pen, own[0])}" if own else ""
    means = f", each the mean of {row.each}" if row.each > 1 else ""
    return f"Read {name}, {row.stage}, {' '.join(row.typed)}{means}{word}."


def _word(pen: Pen, row: VerdictRow) -> str:
    """The verdict in a word: a setting is out of its setting, a size alone is judged by nothing."""
    if not row.verdict:
        return "size only"
    return word_of(pen.book.measures[row.figure], Verdict(row.verdict), row.says)


def _as_stored(entry: DiaryEntry, sent: _Sent) -> TookReading:
    """What an earlier sending stored. Raises Refused where this one says something else."""
    made = [row_named(name) for name in entry.touched if "figure" in entry.after[name]]
    reading = next((row for row in made if isinstance(row, ReadingRow)), None)
    if reading is None or not _says(sent, reading):
        used = f"The key {entry.client_key!r} was used already, for: {entry.says}"
        raise Refused([f"{used} Choose a new key."])
    verdicts = tuple(row for row in made if isinstance(row, VerdictRow))
    return TookReading(entry, reading, verdicts, repeated=True)


def _says(sent: _Sent, reading: ReadingRow) -> bool:
    """Whether a sending says what is stored: the same numbers of the same thing."""
    book = book_of(reading.machine)
    key = find_figure(book, sent.figure)
    piece = find_piece(book, book.measures[key].of, sent.piece)
    place = reading_place(key, piece, one_word(Stage, sent.stage, "stage"))
    there = find_machine(sent.machine).pk == reading.machine_id and place == reading.place
    return there and (tuple(reading.typed), reading.each) == (sent.typed, sent.each)


def _which(pen: Pen, figure: str, typed: str) -> str:
    """The piece a verdict is on, or the word for all of them compared."""
    if typed.strip().lower() == TOGETHER:
        return TOGETHER
    return find_piece(pen.book, pen.book.measures[figure].of, typed)


def _latest(pen: Pen, figure: str, piece: str) -> VerdictRow | None:
    rows = pen.machine.verdicts.filter(figure=figure, piece=piece, current=True)
    stages = {row.stage: row for row in rows}
    return stages.get(Stage.FINISHED) or stages.get(Stage.FOUND)
