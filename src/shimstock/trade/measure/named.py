"""How pieces of a part are called in a sentence."""

from __future__ import annotations

from collections.abc import Iterable

from shimstock.trade.machine.book import Book


def piece_name(book: Book, part: str, piece: str) -> str:
    """A piece as a person calls it: "liner 1", "left injection pump".

    A number stands behind the name, a word before it.
    """
    name = book.parts[part].name
    name = name[:1].lower() + name[1:]
    if not piece:
        return name
    return f"{name} {piece}" if piece[0].isdigit() else f"{piece} {name}"


def listed(names: Iterable[str]) -> str:
    """Names in one phrase.

    >>> listed(["left", "right"]), listed(["1", "2", "3"])
    ('left and right', '1, 2 and 3')
    """
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def all_of(count: int) -> str:
    """How all pieces of a part are meant: it, both, all 4."""
    return {1: "it", 2: "both"}.get(count, f"all {count}")
