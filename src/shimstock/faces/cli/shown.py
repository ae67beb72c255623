"""What a command shows: lines, headings, tables and cautions, on a terminal or down a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from rich.console import Console
    from rich.table import Table as RichTable

STYLES = {
    "blocked": "bold red",
    "good": "green",
    "serviceable": "green",
    "borderline": "yellow",
    "too much in all": "yellow",
    "worn out": "bold red",
    "not a pair": "bold red",
    "out of its setting": "bold red",
    "too far apart": "bold red",
    "NO": "bold red",
    "not measured": "dim",
    "leaking": "bold red",
    "weeping": "red",
    "open": "yellow",
    "parked open": "yellow",
    "leak-checked": "green",
    "rejected": "red",
    "passed": "green",
    "can be passed": "green",
}
"""Colours for the trade's words; on a terminal only, and always beside the word itself."""


@dataclass(frozen=True)
class Heading:
    """A line that says what comes below it."""

    text: str


@dataclass(frozen=True)
class Caution:
    """Something that can hurt: shown before the work, whole."""

    name: str
    lines: Sequence[str] = ()


@dataclass(frozen=True)
class Table:
    """Rows under headings; the last column takes the room that is left."""

    columns: Sequence[str]
    rows: Sequence[Sequence[str]]
    right: frozenset[str] = field(default_factory=frozenset)


@dataclass(frozen=True)
class Verbatim:
    """Text that must come out as it is, however long its lines."""

    text: str


Shown = str | Heading | Caution | Table | Verbatim


@dataclass(frozen=True)
class Answer:
    """What a command found or did: plain values for --json, and the same shown to a person."""

    data: dict[str, Any]
    shown: Sequence[Shown]
    faults: bool = False
    """True where what was asked for stands against it: exit code 1."""


def listed_under(heading: str, lines: Sequence[str]) -> list[Shown]:
    """Lines under a heading; nothing where there are none."""
    return [Heading(heading), *(f"  {line}" for line in lines)] if lines else []


def show(shown: Iterable[Shown]) -> None:
    """Print to stdout: in colour on a terminal; plain, without blanks at line ends, down a pipe."""
    from rich.console import Console

    console = Console(highlight=False, markup=False, emoji=False)
    if console.is_terminal:
        _show_all(console, shown)
        return
    with console.capture() as captured:
        _show_all(console, shown)
    for line in captured.get().splitlines():
        console.file.write(f"{line.rstrip()}\n")


def _show_all(console: Console, shown: Iterable[Shown]) -> None:
    for each in shown:
        match each:
            case Heading(text):
                _line(console, f"\n{text}", "bold")
            case Caution(name, lines):
                _line(console, f"CAUTION: {name}", "bold yellow")
                for line in lines:
                    _line(console, f"  {line}")
            case Table():
                console.print(_table(each))
            case Verbatim(text):
                console.print(text, soft_wrap=True)
            case _:
                _line(console, each)


def _line(console: Console, text: str, style: str = "") -> None:
    """Print a line; where it is too long it goes on below, a little further in."""
    body = text.lstrip(" ")
    indent = " " * (len(text) - len(body))
    filled = "\n".join(
        textwrap.fill(
            part, console.width, initial_indent=indent, subsequent_indent=indent + "  ",
            break_long_words=False, break_on_hyphens=False,
        )
        for part in body.split("\n")
    )  # fmt: skip
    console.print(filled, style=style, soft_wrap=True)


def style_of(cell: str) -> str:
    """The colour of a cell that is one of the trade's words, or ends in one after a reading.

    >>> style_of("0.0057 in: worn out"), style_of("unworn")
    ('bold red', '')
    """
    return STYLES.get(cell.rpartition(": ")[2], "")


def _table(table: Table) -> RichTable:
    from rich.box import SIMPLE_HEAD
    from rich.table import Table as RichTable
    from rich.text import Text

    drawn = RichTable(box=SIMPLE_HEAD, pad_edge=False, padding=(0, 1), show_edge=False)
    for name in table.columns:
        narrow = name != table.columns[-1]
        drawn.add_column(
            name,
            justify="right" if name in table.right else "left",
            overflow="fold",
            ratio=None if narrow else 1,
        )
    for row in table.rows:
        drawn.add_row(*(Text(cell, style=style_of(cell)) for cell in row))
    return drawn
