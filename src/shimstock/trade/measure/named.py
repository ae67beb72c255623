"""How pieces of a part are called in a sentence."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


def piece_name(book: Book, part: str, piece: str) -> str:
    """A piece as a person calls it: "liner 1", "left injection pump".

    A number stands behind the name, a word before it.
    """
    name = in_sentence(book.parts[part].name)
    if not piece:
        return name
    return f"{name} {piece}" if piece[0].isdigit() else f"{piece} {name}"


def in_sentence(name: str) -> str:
    """A name as it stands inside a sentence; what begins with two capitals keeps them.

    >>> in_sentence("Liner bore"), in_sentence("PTO speed")
    ('liner bore', 'PTO speed')
    """
    return name if name[1:2].isupper() else name[:1].lower() + name[1:]


def with_article(name: str) -> str:
    """A name inside a sentence, with its a or an.

    >>> with_article("Liner bore"), with_article("Idle speed")
    ('a liner bore', 'an idle speed')
    """
    said = in_sentence(name)
    return f"{'an' if said[:1].casefold() in 'aeiou' else 'a'} {said}"


def listed(names: Iterable[str], last: str = "and") -> str:
    """Names in one phrase; last: the word before the last of them.

    >>> listed(["left", "right"]), listed(["1", "2", "3"], "or")
    ('left and right', '1, 2 or 3')
    """
    *most, final = names
    return f"{', '.join(most)} {last} {final}" if most else final


def all_of(count: int) -> str:
    """How all pieces of a part are meant: it, both, all 4."""
    return {1: "it", 2: "both"}.get(count, f"all {count}")
