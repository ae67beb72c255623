"""Verdicts as lines and tables: one figure after another, worn first."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, Table

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.looking import Seen

WORST_FIRST = ("worn out", "borderline", "not measured", "serviceable", "good")
STAND_IN = "stand-in figure"
TOGETHER = "together"  # stands where a piece would, for a verdict on how far they differ


def verdict_rows(seen: Seen, figure: str | None) -> tuple[list[Any], list[str]]:
    """Verdicts that count, worn first, and the figures that nobody has read.

    Raises NotFound for an unknown figure.
    """
    from shimstock.workshop.find import find_figure

    wanted = [find_figure(seen.book, figure)] if figure else list(seen.book.measures)
    place = {key: number for number, key in enumerate(wanted)}
    rows = [row for row in seen.row.verdicts.filter(current=True) if row.figure in place]
    rows.sort(key=lambda row: (_rank(row), place[row.figure], row.piece, row.stage))
    read = {row.figure for row in rows}
    return rows, [key for key in wanted if key not in read]


def _rank(row: Any) -> int:
    return WORST_FIRST.index(row.verdict) if row.verdict in WORST_FIRST else len(WORST_FIRST)


def verdict_data(book: Book, row: Any, working: bool) -> dict[str, Any]:
    """A verdict as plain values; working: with the lines of how it was reached."""
    data = {
        "figure": row.figure,
        "piece": row.piece,
        "stage": row.stage,
        "verdict": row.verdict,
        "says": row.says,
        "p": row.p,
        **{name: row.data.get(name) for name in ("value", "unit", "expanded", "settles", "remedy")},
        "stand_in": book.measures[row.figure].stand_in,
        "accepted": row.accepted_reason,
    }
    return data | {"working": working_lines(row)} if working else data


def working_lines(row: Any) -> list[str]:
    """How a stored verdict was reached, line by line."""
    from shimstock.trade.numbers.working import Working

    stored = row.data.get("working")
    return list(Working.from_data(stored).shown()) if stored else []


def verdict_block(book: Book, row: Any) -> list[Shown]:
    """One verdict: the word, the figure, what it says, what settles it, what to do."""
    from shimstock.trade.machine.words import Verdict
    from shimstock.trade.measure.words import word_of
    from shimstock.workshop.wording import figure_named

    name = figure_named(book, row.figure, row.piece)
    mark = f" [{STAND_IN}]" if book.measures[row.figure].stand_in else ""
    word = word_of(book.measures[row.figure], Verdict(row.verdict)) if row.verdict else "size only"
    lines: list[Shown] = [f"{word.upper()}: {name}, {row.stage}{mark}", f"  {row.says}"]
    if row.p is not None and "chance" not in row.says:
        lines += [f"  Chance of being within the limit: {_chance(row.p)}"]
    for label, name in (("Settles it", "settles"), ("What to do", "remedy")):
        lines += [f"  {label}: {row.data[name]}"] if row.data.get(name) else []
    return [*lines, f"  Accepted: {row.accepted_reason}"] if row.accepted_reason else lines


def opened(book: Book, row: Any) -> list[Shown]:
    """One verdict with its whole working."""
    first, *rest = verdict_block(book, row)
    return [Heading(str(first)), *rest, *(f"    {line}" for line in working_lines(row))]


def side_by_side(book: Book, rows: list[Any]) -> Table:
    """As found and as finished beside each other, a line for each figure of each piece."""
    lines: dict[tuple[str, str], dict[str, str]] = {}
    for row in rows:
        lines.setdefault((row.figure, row.piece), {})[row.stage] = _short(row)
    rows = [
        (
            book.measures[key].mark or "",
            book.measures[key].name + (f", {piece}" if piece else ""),
            cells.get("as found", "-"),
            cells.get("as finished", "-"),
            _limit(book, key, piece),
        )
        for (key, piece), cells in lines.items()
    ]
    return Table(("mark", "figure", "as found", "as finished", "limit"), rows)


def _short(row: Any) -> str:
    """The first of what a verdict says: 0.0057 in: worn out."""
    said = re.split(r"[,;]", row.says)[0] or row.verdict
    return f"{said} (accepted)" if row.accepted_reason else said


def _limit(book: Book, figure: str, piece: str) -> str:
    entry = book.measures[figure]
    limits = [each.typed for each in entry.limit] or ([entry.new.typed] if entry.new else [])
    if piece == TOGETHER and entry.pair:
        limits = [f"apart {entry.pair.typed}"]
    whose = STAND_IN if entry.stand_in else f"page {entry.page}"
    return f"{', '.join(limits)} ({whose})"


def _chance(p: float) -> str:
    from shimstock.trade.measure.words import percent

    return percent(p)
