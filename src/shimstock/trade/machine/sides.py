"""What a piece sits on, on its own side of the machine."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


def sits_on(book: Book, part: str, piece: str = "") -> str | None:
    """The part that a piece sits on: of two like parts that are named so, the one on its own side.

    A book names one of the two: axle shafts, left and right, that sit on left-axle-housing.
    part, piece: the part's key and the name of one of its pieces; "" for all of it.
    """
    entry = book.parts[part]
    below = entry.sits_on
    for other in entry.instances if below and piece else ():
        twin = re.sub(rf"\b{re.escape(other)}\b", piece, str(below))
        below = twin if twin in book.parts else below
    return below


def on_their_sides(book: Book, part: str) -> tuple[str, ...]:
    """The pieces of a part one by one where they sit on parts of their own; else one "" for all."""
    pieces = book.parts[part].instances
    if len(pieces) == 1:
        return ("",)
    below = [sits_on(book, part, piece) for piece in pieces]
    if len(set(below)) > 1:
        return pieces
    first = below[0]
    return pieces if first and on_their_sides(book, first) == pieces else ("",)
