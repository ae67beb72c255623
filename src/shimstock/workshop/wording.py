"""Words in and out: which of the trade's words was typed, and how a thing is named in a line."""

from __future__ import annotations

import re
from collections.abc import Iterable
from enum import StrEnum
from typing import TYPE_CHECKING, TypeVar

from shimstock.trade.measure.named import listed as listed
from shimstock.workshop.refused import NotFound

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book

Word = TypeVar("Word", bound=StrEnum)


class NoSuchWord(NotFound):
    """A trade word that is none; the message names the words there are."""

    def __init__(self, what: str, typed: str, known: Iterable[str], where: str = "") -> None:
        self._known = tuple(known)
        super().__init__(what, typed, self._known, where)

    def _next_move(self) -> str:
        near = f"Did you mean {listed(self.near, 'or')}? " if self.near else ""
        return f"{near}One of these would do: {', '.join(self._known)}."


def one_word(words: type[Word], typed: str, what: str) -> Word:
    """Find the trade word that was typed, whatever its case, with hyphens or spaces.

    what: what the words are about, for the message. Raises NotFound, which names them all where
    none is near.
    """
    wanted = _bare(typed)
    for word in words:
        if _bare(word) == wanted:
            return word
    raise NoSuchWord(what, typed, [str(word) for word in words])


def joint_named(book: Book, joint: str) -> str:
    """Name a joint with its mark."""
    return _with_mark(book.joints[joint].name, book.joints[joint].mark)


def piece_named(book: Book, part: str, piece: str) -> str:
    """Name a piece with its mark."""
    name = _with_mark(book.parts[part].name, book.parts[part].mark)
    return called(name, piece)


def figure_named(book: Book, figure: str, piece: str) -> str:
    """Name a figure, of which piece, with its mark."""
    name = _with_mark(book.measures[figure].name, book.measures[figure].mark)
    return called(name, piece)


def called(name: str, piece: str) -> str:
    """Call one piece of a thing by the thing's name."""
    return f"{name}, {piece}" if piece else name


_SHORT_NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")


def is_short_name(text: str) -> bool:
    """Whether a text can be typed as the name of a machine or a book."""
    return _SHORT_NAME.fullmatch(text) is not None


def as_short_name(text: str) -> str:
    """A name made of a text; "" where nothing of it can serve.

    >>> as_short_name("Grey Mare, the 2nd")
    'grey-mare-the-2nd'
    """
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")[:60]


def count_of(count: int, thing: str) -> str:
    """Say how many, as 1 bolt or 12 bolts."""
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def _with_mark(name: str, mark: str | None) -> str:
    return f"{name} ({mark})" if mark else name


def _bare(text: str) -> str:
    return text.strip().lower().replace("-", " ")
