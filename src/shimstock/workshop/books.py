"""Books of machines, each read from the copy that the machine keeps of the whole of it."""

from collections.abc import Mapping
from functools import lru_cache

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_names, starter_text
from shimstock.workshop.models import Machine

Starters = Mapping[str, str]
"""The text of each starter that a book extends, and that those extend, by its name."""


def book_of(machine: Machine) -> Book:
    """The book a machine is made to, read from the copy that is kept with the machine.

    Raises BookErrors where a newer version of the program no longer understands the copy.
    """
    return book_from(machine.book_text, machine.book_name, machine.starters)


def book_from(text: str, name: str, starters: Starters | None = None) -> Book:
    """Read a book's text, once for each text.

    starters: those that it extends; as they are installed today if not given.
    Raises BookErrors.
    """
    kept = starters_today(text, name) if starters is None else starters
    return _read(text, name, tuple(sorted(kept.items())))


def starters_today(text: str, name: str) -> dict[str, str]:
    """The starters that a book extends, as they are installed today.

    Raises BookErrors.
    """
    found: dict[str, str] = {}

    def noted(starter: str) -> str:
        found[starter] = starter_text(starter)
        return found[starter]

    read_book(text, name, starter=noted, names=starter_names)
    return found


def newer_starters(machine: Machine) -> tuple[str, ...]:
    """Starters that are installed today with another text than the machine keeps of them.

    A machine is given them by changing its book, never unasked.
    """
    kept = {**machine.starters, machine.book_name: machine.book_text}  # it may be a starter itself
    installed = set(starter_names())
    return tuple(
        name for name, text in kept.items() if name in installed and starter_text(name) != text
    )


def knows_piece(book: Book, part: str, piece: str) -> bool:
    """Whether a book has this piece of a part."""
    return part in book.parts and piece in book.parts[part].instances


def knows_figure(book: Book, figure: str, piece: str) -> bool:
    """Whether a book has this figure, and this piece of its part."""
    entry = book.measures.get(figure)
    return entry is not None and knows_piece(book, entry.of, piece)


@lru_cache(maxsize=128)  # a shed has some tens of machines, each with a book of its own
def _read(text: str, name: str, starters: tuple[tuple[str, str], ...]) -> Book:
    copies = dict(starters)
    return read_book(text, name, starter=copies.__getitem__, names=lambda: copies, kept=True)
