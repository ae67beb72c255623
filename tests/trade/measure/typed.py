"""Readings as a person types them, for the tests of this room."""

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.take import understand
from shimstock.trade.measure.verdicts import Verdicts

DIESEL = """
book: shed-machine
title: An invented two-cylinder machine
extends: two-cylinder-diesel
"""


def diesel(more: str = "") -> Book:
    """The shipped two-cylinder diesel, with a shed's own lines laid over it."""
    return read_book(DIESEL + more, "shed-machine.yaml")


def read(book: Book, stage: Stage = Stage.FOUND, **typed):
    """Readings from {"figure piece": "5.7592 5.7554 ..."}, with spaces between the places."""
    out = {}
    for said, numbers in typed.items():
        figure, _, piece = said.partition(" ")
        reading = understand(figure, book.measures[figure], numbers.split())
        out[figure, piece, stage] = reading
    return out


def disagreements(found: Verdicts) -> list[str]:
    """Whatever does not agree in any working."""
    return [text for each in found.judged.values() for text in each.working.disagreements()]
