"""The two-cylinder diesel of the scenes: the starter, with its invented stand-in figures."""

from datetime import date
from functools import cache

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.starters import starter_text
from shimstock.trade.machine.state import Answer, MachineNow

TODAY = date(2026, 6, 4)


@cache
def starter(name: str = "two-cylinder-diesel") -> Book:
    """A starter, read as a shop reads it."""
    return read_book(starter_text(name), name)


def diesel(**state) -> MachineNow:
    """A machine made to the two-cylinder diesel's book."""
    return MachineNow(starter(), TODAY, **state)


def signed(said: str, reason: str = "") -> Answer:
    """An answer that a person has signed."""
    return Answer(said, "Ann", TODAY, reason)
