from functools import lru_cache

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.reading import read_book
from shimstock.workshop.models import Machine


def book_of(machine: Machine) -> Book:
    """The book a machine is made to, read from the copy that is kept with the machine.

    Raises BookErrors where a newer version of the program no longer understands the copy.
    """
    return book_from(machine.book_text, machine.book_name)


@lru_cache(maxsize=16)
def book_from(text: str, name: str) -> Book:
    """Read a book's text, once for each text.

    Raises BookErrors.
    """
    return read_book(text, name)
