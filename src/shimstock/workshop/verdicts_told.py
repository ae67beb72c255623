"""Verdicts as they are told: worn first, as found beside as finished, each with its limit."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.words import word_of
from shimstock.trade.numbers.percent import percent
from shimstock.trade.numbers.working import Working
from shimstock.workshop.find import find_figure
from shimstock.workshop.models import VerdictRow

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.looking import Seen

WORST_FIRST = ("worn out", "borderline", "not measured", "serviceable", "good")
STAND_IN = "stand-in figure"
SIZE_ONLY = "size only"


@dataclass(frozen=True)
class Line:
    """One figure of one piece, as found beside as finished."""

    figure: str
    piece: str
    found: VerdictRow | None = None
    finished: VerdictRow | None = None

    @property
    def counts(self) -> VerdictRow:
        """The verdict that counts now."""
        row = self.finished or self.found
        assert row is not None
        return row


def verdicts_that_count(
    seen: Seen, figure: str | None = None, *, whole: bool = True
) -> tuple[list[VerdictRow], list[str]]:
    """Verdicts that count, worn first, and the figures that nobody has read.

    figure: only this one. whole: with how each was reached, which is long.
    Raises NotFound for an unknown figure.
    """
    wanted = [find_figure(seen.book, figure)] if figure else list(seen.book.measures)
    place = {key: number for number, key in enumerate(wanted)}
    kept = seen.row.verdicts.filter(current=True)
    rows = [row for row in (kept if whole else kept.defer("data")) if row.figure in place]
    rows.sort(key=lambda row: (rank(row), place[row.figure], row.piece, row.stage))
    read = {row.figure for row in rows}
    return rows, [key for key in wanted if key not in read]


def rank(row: VerdictRow) -> int:
    """Where a verdict stands among others, worn first."""
    return WORST_FIRST.index(row.verdict) if row.verdict in WORST_FIRST else len(WORST_FIRST)


def side_by_side(rows: Iterable[VerdictRow]) -> list[Line]:
    """As found and as finished beside each other, in the order of the first of the two."""
    cells: dict[tuple[str, str], dict[str, VerdictRow]] = {}
    for row in rows:
        cells.setdefault((row.figure, row.piece), {})[row.stage] = row
    return [
        Line(figure, piece, found.get(Stage.FOUND), found.get(Stage.FINISHED))
        for (figure, piece), found in cells.items()
    ]


def lines_that_count(seen: Seen) -> list[Line]:
    """Every figure of every piece that was read, worn first by the verdict that counts now.

    Without how each was reached; worked out once and remembered with the machine.
    """
    remembered: dict[str, list[Line]] = vars(seen)
    if (lines := remembered.get("lines_that_count")) is None:
        rows, _ = verdicts_that_count(seen, whole=False)
        lines = sorted(side_by_side(rows), key=lambda line: rank(line.counts))
        remembered["lines_that_count"] = lines
    return lines


def word_told(book: Book, row: VerdictRow) -> str:
    """The verdict in a word; of a setting, that it is out of it."""
    if not row.verdict:
        return SIZE_ONLY
    return word_of(book.measures[row.figure], Verdict(row.verdict), row.says)


def short(row: VerdictRow) -> str:
    """The first of what a verdict says: 0.0057 in: worn out."""
    said = re.split(r"[,;]", row.says)[0] or row.verdict
    return f"{said} (accepted)" if row.accepted_reason else said


def chance_told(row: VerdictRow) -> str:
    """The chance of being within the limit; "" where the verdict says it or there is none."""
    return percent(row.p) if row.p is not None and "chance" not in row.says else ""


def limit_told(book: Book, figure: str, piece: str) -> str:
    """What the book allows."""
    entry = book.measures[figure]
    limits = [each.typed for each in entry.limit] or ([entry.new.typed] if entry.new else [])
    if piece == TOGETHER and entry.pair:
        limits = [f"apart {entry.pair.typed}"]
    return ", ".join(limits)


def whose(book: Book, figure: str) -> str:
    """Whose figure it is: a page of the maker's book, or a stand-in."""
    entry = book.measures[figure]
    return STAND_IN if entry.stand_in else f"page {entry.page}"


def working_lines(row: VerdictRow) -> list[str]:
    """How a stored verdict was reached, line by line."""
    stored = row.data.get("working")
    return list(Working.from_data(stored).shown()) if stored else []
