"""Every reading of a machine as a table that other programs read (RFC 4180, UTF-8)."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from typing import TYPE_CHECKING

from shimstock.faces.paper.wording import joined

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import ReadingRow, VerdictRow

COLUMNS = (
    "machine", "figure", "mark", "name", "piece", "stage", "typed", "values", "unit", "instrument",
    "resolution", "error", "mean of", "by", "at", "superseded", "verdict", "says", "new", "limit",
    "stand-in",
)  # fmt: skip
BETWEEN = "; "
"""Between several values of one reading."""
TAKEN_FOR_FORMULAS = ("=", "+", "-", "@", "\t", "\r")


def readings_csv(seen: Seen) -> Iterator[str]:
    """The table, a line at a time: one row a reading, older ones that were read again included.

    A text that a spreadsheet would take for a formula has an apostrophe before it.
    """
    lines = csv.writer(_Line())
    yield lines.writerow(COLUMNS)
    verdicts = _verdicts(seen)
    for row in seen.row.readings.filter(withdrawn=False).order_by("pk").iterator():
        judged = None if row.superseded else verdicts.get((row.figure, row.piece, row.stage))
        yield lines.writerow(_cells(seen, row, judged))


class _Line:
    """Takes the place of a file: hands each line back."""

    def write(self, line: str) -> str:
        return line


def _verdicts(seen: Seen) -> dict[tuple[str, str, str], VerdictRow]:
    rows = seen.row.verdicts.filter(current=True).defer("data")
    return {(row.figure, row.piece, row.stage): row for row in rows}


def _cells(seen: Seen, row: ReadingRow, judged: VerdictRow | None) -> list[str]:
    from django.utils.timezone import localtime

    gauge = row.instrument or {}
    texts = [
        seen.row.name,
        row.figure,
        *_named(seen.book, row.figure),
        row.piece,
        row.stage,
        BETWEEN.join(row.typed),
        BETWEEN.join("" if each is None else number(each) for each in row.values),
        row.unit,
        str(gauge.get("name") or ""),
        number(gauge.get("resolution")),
        number(gauge.get("error")),
        str(row.each),
        row.by,
        localtime(row.at).isoformat(timespec="seconds"),
        "yes" if row.superseded else "no",
        judged.verdict if judged else "",
        judged.says if judged else "",
        *_allowed(seen.book, row.figure),
    ]
    return [guarded(text) for text in texts]


def number(value: float | None) -> str:
    """A number as programs read it: with a point, no gaps, and all of its digits that count.

    >>> number(5.7592), number(0.00005), number(705.0), number(None)
    ('5.7592', '0.00005', '705', '')
    """
    if value is None:
        return ""
    return f"{value:.10f}".rstrip("0").rstrip(".") if abs(value) < 1e15 else repr(value)


def guarded(text: str) -> str:
    """A cell that no spreadsheet takes for a formula; numbers stay numbers.

    >>> guarded("=1+1"), guarded("-0.003"), guarded("@home"), guarded("5.7592")
    ("'=1+1", '-0.003', "'@home", '5.7592')
    """
    if not text.startswith(TAKEN_FOR_FORMULAS):
        return text
    try:
        float(text)
    except ValueError:
        return f"'{text}"
    return text


def _named(book: Book, figure: str) -> tuple[str, str]:
    """Mark and name; nothing where the book has changed and knows it no more."""
    entry = book.measures.get(figure)
    return (entry.mark or "", entry.name) if entry else ("", "")


def _allowed(book: Book, figure: str) -> tuple[str, str, str]:
    """What the book allows as new and in use, and whether that is a stand-in figure."""
    entry = book.measures.get(figure)
    if entry is None:
        return "", "", ""
    limit = joined((each.typed for each in entry.limit), BETWEEN)
    new = entry.new.typed if entry.new else ""
    return new, limit, "yes" if entry.stand_in else "no"
