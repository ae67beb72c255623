"""Verdicts as lines and tables: one figure after another, worn first."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown, Table

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


def verdict_data(book: Book, row: Any, working: bool) -> dict[str, Any]:
    """A verdict as plain values; working: with the lines of how it was reached."""
    from shimstock.workshop import verdicts_told as told

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
    return data | {"working": told.working_lines(row)} if working else data


def verdict_block(book: Book, row: Any) -> list[Shown]:
    """One verdict: the word, the figure, what it says, what settles it, what to do."""
    from shimstock.workshop import verdicts_told as told
    from shimstock.workshop.wording import figure_named

    name = figure_named(book, row.figure, row.piece)
    mark = f" [{told.STAND_IN}]" if book.measures[row.figure].stand_in else ""
    lines: list[Shown] = [
        f"{told.word_told(book, row).upper()}: {name}, {row.stage}{mark}",
        f"  {row.says}",
    ]
    if chance := told.chance_told(row):
        lines += [f"  Chance of being within the limit: {chance}"]
    for label, name in (("Settles it", "settles"), ("What to do", "remedy")):
        lines += [f"  {label}: {row.data[name]}"] if row.data.get(name) else []
    return [*lines, f"  Accepted: {row.accepted_reason}"] if row.accepted_reason else lines


def opened(book: Book, row: Any) -> list[Shown]:
    """One verdict with its whole working."""
    from shimstock.workshop.verdicts_told import working_lines

    first, *rest = verdict_block(book, row)
    return [Heading(str(first)), *rest, *(f"    {line}" for line in working_lines(row))]


def side_by_side(book: Book, rows: list[Any]) -> Table:
    """As found and as finished beside each other, a line for each figure of each piece."""
    from shimstock.workshop import verdicts_told as told

    lines = [
        (
            book.measures[line.figure].mark or "",
            book.measures[line.figure].name + (f", {line.piece}" if line.piece else ""),
            told.short(line.found) if line.found else "-",
            told.short(line.finished) if line.finished else "-",
            f"{told.limit_told(book, line.figure, line.piece)} ({told.whose(book, line.figure)})",
        )
        for line in told.side_by_side(rows)
    ]
    return Table(("mark", "figure", "as found", "as finished", "limit"), lines)
