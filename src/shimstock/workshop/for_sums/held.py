"""A machine's book and readings as sums look at them, and where each value comes from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import isclose
from typing import Any

from django.utils import timezone

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.sheet import read_sheet
from shimstock.trade.machine.starters import starter_names
from shimstock.trade.machine.words import Stage
from shimstock.trade.numbers.digits import GIVEN, written
from shimstock.trade.numbers.quantity import parse, show
from shimstock.trade.sums.typed import Origin
from shimstock.workshop.books import book_of
from shimstock.workshop.judging import readings_of, verdict_rows
from shimstock.workshop.models import Machine, ReadingRow, VerdictRow


@dataclass(frozen=True)
class Taken:
    """What a figure of one piece measures now: its verdict, and the reading behind it."""

    verdict: VerdictRow
    reading: ReadingRow
    worst_of: str

    @property
    def origin(self) -> str:
        """When it was read, by whom, what and where."""
        row, verdict = self.reading, self.verdict
        what = " ".join(filter(None, (verdict.figure, verdict.piece)))
        worked = "worked out" if row.figure != verdict.figure else ""
        stage = verdict.stage if verdict.stage == Stage.FINISHED else ""
        said = ", ".join(filter(None, (what, worked or self.worst_of, stage)))
        return f"reading {timezone.localdate(row.at).isoformat()} by {row.by} ({said})"


class Held:
    """A machine's book, and what was read on it."""

    def __init__(self, machine: Machine) -> None:
        self.machine = machine
        self.book: Book = book_of(machine)

    def where(self, section: str, key: str, field: str, page: int | str | None) -> str:
        """The page of an entry of the book; without one, that it is a stand-in, and whose."""
        if page is not None:
            return f"book, page {page}"
        entry = (self._own.get(section) or {}).get(key) or {}
        if field in entry:
            return "stand-in figure, no page given"
        return "stand-in figure of the starter"

    def taken(self, figure: str, piece: str | None = None) -> Taken | None:
        """The newest that was read of a figure, on any piece or on one; None where nothing was.

        Of one piece, what was read as finished goes before what was found.
        """
        pieces = self.book.parts[self.book.measures[figure].of].instances
        found = [self._of_piece(figure, one) for one in pieces if piece in (None, one)]
        return max((one for one in found if one), key=lambda one: one.reading.at, default=None)

    def _of_piece(self, figure: str, piece: str) -> Taken | None:
        for stage in (Stage.FINISHED, Stage.FOUND):
            verdict = self._verdicts.get((figure, piece, stage))
            reading = self._behind(figure, piece, stage)
            if verdict is not None and reading is not None:
                return Taken(verdict, reading, _of_many(self.book.measures[figure], reading))
        return None

    def _behind(self, figure: str, piece: str, stage: Stage) -> ReadingRow | None:
        """The reading of a figure, or the newest of those that it is worked out from."""
        direct = self._readings.get((figure, piece, stage))
        derive = self.book.measures[figure].derive
        if direct is not None or derive is None:
            return direct
        rows = [row for source in derive.sources for row in self._of_source(source, piece, stage)]
        return max(rows, key=lambda row: row.at, default=None)

    def _of_source(self, source: str, piece: str, stage: Stage) -> Iterator[ReadingRow]:
        for one in (piece, ""):
            if (row := self._readings.get((source, one, stage))) is not None:
                yield row

    @cached_property
    def _own(self) -> dict[str, Any]:
        """What the machine's own book says, without the starters below it."""
        if self.machine.book_name in starter_names():
            return {}
        return read_sheet(self.machine.book_text, self.machine.book_name).data

    @cached_property
    def _readings(self) -> dict[tuple[str, str, Stage], ReadingRow]:
        rows = readings_of(self.machine)
        return {(row.figure, row.piece, Stage(row.stage)): row for row in rows}

    @cached_property
    def _verdicts(self) -> dict[tuple[str, str, Stage], VerdictRow]:
        return verdict_rows(self.machine)


def _of_many(figure: Figure, reading: ReadingRow) -> str:
    """How one value stands for the several places of a reading."""
    places = sum(value is not None for value in reading.values)
    if places < 2:
        return ""
    return f"mean of {places}" if figure.judge == "mean" else f"worst of {places}"


def with_unit(value: float, unit: str) -> str:
    """A value as it would be typed: as finely as its unit is shown, or finer where it is finer."""
    text = show(value, unit)
    if isclose(parse(text, unit=unit).value, value):
        return text
    return f"{written(value, GIVEN)} {unit}".removesuffix(" count")


def of_data(held: Held, word: str) -> Origin | None:
    """What the book or a reading gives for the whole machine under a word, such as bore.

    The newest reading of a figure that stands for it goes before what the book prints.
    """
    key = word.replace(" ", "-")
    figures = [name for name, each in held.book.measures.items() if each.gives == key]
    read = [one for one in map(held.taken, figures) if one is not None]
    if read:
        newest = max(read, key=lambda one: one.reading.at)
        return Origin(with_unit(newest.verdict.value, newest.verdict.unit), newest.origin)
    datum = held.book.data.get(key)
    if datum is not None:
        return Origin(datum.text, held.where("data", key, "value", datum.page))
    return next(filter(None, (as_printed(held, name) for name in figures)), None)


def as_printed(held: Held, figure: str) -> Origin | None:
    """The one value that the book gives a figure: its nominal size, or its only new value."""
    entry = held.book.measures[figure]
    section = "figures" if figure in held.book.figures else "settings"
    if entry.nominal is not None:
        return Origin(entry.nominal.typed, held.where(section, figure, "nominal", entry.page))
    new = entry.as_new
    if new is None or new.low is None or new.low != new.high:
        return None
    return Origin(with_unit(new.low, new.unit), held.where(section, figure, "new", entry.page))
