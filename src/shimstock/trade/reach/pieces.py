"""Which pieces of a part, and which figures, stand behind one joint."""

from __future__ import annotations

import re
from collections.abc import Iterator

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import PieceKey


def parts_behind(book: Book, joint: str) -> tuple[str, ...]:
    """Parts that meet at a joint or come to light when it is open."""
    entry = book.joints[joint]
    return tuple(dict.fromkeys((*entry.between, *entry.reaches)))


def pieces_behind(book: Book, joint: str) -> Iterator[PieceKey]:
    """Single pieces that meet at a joint or come to light when it is open."""
    for part in parts_behind(book, joint):
        for piece in pieces_at(book, joint, part):
            yield part, piece


def pieces_at(book: Book, joint: str, part: str) -> tuple[str, ...]:
    """The pieces of a part that belong to a joint.

    Where the joint's key or name says which (left, right, 2), only those; else all of them.
    """
    said = set(re.findall(r"[a-z0-9]+", f"{joint} {book.joints[joint].name}".casefold()))
    pieces = book.parts[part].instances
    return tuple(piece for piece in pieces if piece.casefold() in said) or pieces


def piece_name(book: Book, part: str, piece: str) -> str:
    """What a person calls one piece: the part's name, and which one."""
    name = book.parts[part].name
    return f"{name}, {piece}" if piece else name


def figures_of(book: Book, part: str) -> Iterator[str]:
    """Figures and settings that are read on a part."""
    return (key for key, figure in book.measures.items() if figure.of == part)
