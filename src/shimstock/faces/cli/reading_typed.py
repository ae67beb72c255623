"""Sorts the words of a reading: which piece, which values, with what it was read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import typer

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.numbers.instruments import Instrument

OPTION = re.compile(r"--?[A-Za-z]")


@dataclass(frozen=True)
class ReadingTyped:
    """What a person typed, sorted."""

    figure: str
    piece: str
    values: tuple[str, ...]
    instrument: Instrument | str


def sort(book: Book, figure: str, words: list[str], with_: str, good_to: str) -> ReadingTyped:
    """Sort the words after a figure.

    words: the piece first where the part has several, then the values as read.
    with_: the instrument's name. good_to: how true it is, a ± figure with its unit.
    Raises NotFound, NotUnderstood, BadParameter for an option that is none.
    """
    from shimstock.workshop.find import find_figure
    from shimstock.workshop.reading_typed import instrument_typed

    if stray := next((word for word in words if OPTION.match(word)), None):
        raise typer.BadParameter(f"No such option: {stray}.")
    key = find_figure(book, figure)
    part = book.measures[key].of
    several = len(book.parts[part].instances) > 1
    piece = _piece(book, part, words[0]) if several else ""
    values = tuple(words[1:] if several else words)
    return ReadingTyped(key, piece, values, instrument_typed(book, key, with_, good_to))


def understood(book: Book, row: Any) -> list[str]:
    """What was typed and what was understood, place by place."""
    from shimstock.workshop.reading_typed import value_read
    from shimstock.workshop.wording import figure_named

    figure = book.measures[row.figure]
    labels = figure.at.labels if figure.at else ("",) * len(row.typed)
    width, room = max(map(len, labels), default=0), max(map(len, row.typed), default=0)
    lines = [
        f"  {label:<{width}}  {typed:<{room}}  ->  {value_read(value, row)}"
        for label, typed, value in zip(labels, row.typed, row.values, strict=False)
    ]
    gauge = row.instrument["name"] if row.instrument else "no instrument named"
    asked = [f"  The book reads it so: {figure.conditions}."] if figure.conditions else []
    mean = [f"  Each value is the mean of {row.each} readings."] if row.each > 1 else []
    head = f"{figure_named(book, row.figure, row.piece)}, {row.stage}, with {gauge}"
    return [head, *asked, *lines, *mean]


def _piece(book: Book, part: str, typed: str) -> str:
    """Which piece is meant; raises NotUnderstood where a value stands in its place."""
    from shimstock.trade.numbers.not_understood import NotUnderstood
    from shimstock.workshop.find import find_piece
    from shimstock.workshop.wording import listed

    pieces = book.parts[part].instances
    if re.match(r"[-+]?[\d.,]", typed) and typed not in pieces:
        name, which = book.parts[part].name, listed(pieces, "or")
        wrong = f"names no piece, and there are {len(pieces)} of {name}"
        raise NotUnderstood(typed, wrong, (f"type {which} before the values",))
    return find_piece(book, part, typed)
