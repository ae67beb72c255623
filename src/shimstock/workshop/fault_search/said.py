"""What a person says of a sign or a cause: whether it can be said, and what it means."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.workshop.fault_search.words import (
    CLEARED,
    NOT_LOOKED,
    NOT_SEEN,
    SEEN,
    THERE,
    about_called,
)
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import listed

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Figure

MEANS = {SEEN: True, NOT_SEEN: False, THERE: True, CLEARED: False}
"""What the words mean to the trade."""


def check_said(book: Book, about: str, typed: str) -> str:
    """What is kept of what was typed: a word in its usual spelling, or the number as typed.

    about: sign:KEY or cause:KEY of the book. Raises Refused for a word that cannot be said of it,
    NotUnderstood for a number that cannot be read in the figure's unit, or that the figure can
    hardly have.
    """
    kind, _, key = about.partition(":")
    words = (SEEN, NOT_SEEN, NOT_LOOKED) if kind == "sign" else (THERE, CLEARED, NOT_LOOKED)
    said = " ".join(typed.split())
    if (plain := said.lower().replace("-", " ")) in words:
        return plain
    figure = figure_read(book, key) if kind == "sign" else None
    if figure is None or not any(letter.isdigit() for letter in said):
        number = " or a number" if figure else ""
        raise Refused(
            [f"{typed!r} cannot be said of {about_called(book, about)}; "
             f"{listed(words, 'or')}{number} would do"]
        )  # fmt: skip
    _check_slip(figure, figure.mark or book.signs[key].figure or "", said)
    return said


def meant(book: Book, about: str, said: str) -> bool | float:
    """What was said as the trade takes it: a number in the unit of the sign's figure.

    Raises NotUnderstood, where the book has changed so that the number means nothing any more.
    """
    if said in MEANS:
        return MEANS[said]
    figure = figure_read(book, about.partition(":")[2])
    return _read(figure, said) if figure else True


def figure_read(book: Book, sign: str) -> Figure | None:
    """The figure whose number can be said of a sign; None where only seen or not seen can."""
    from shimstock.trade.faults.of_book import spreads_of

    figure = book.measures.get(book.signs[sign].figure or "")
    return figure if figure and spreads_of(figure) else None


def _check_slip(figure: Figure, called: str, said: str) -> None:
    """Hold a number against what its figure can have; one that is meant belongs in a reading.

    called: how the figure is called where it is read.
    """
    from shimstock.trade.measure.take import SlippedDigit, check_plausible
    from shimstock.trade.numbers.not_understood import NotUnderstood

    try:
        check_plausible(figure, said, _read(figure, said))
    except SlippedDigit as slip:
        wrong = slip.wrong.removesuffix("? If it is meant, say so")
        reading = f"a reading, if it is meant: shimstock read MACHINE {called} VALUE --meant"
        raise NotUnderstood(slip.typed, wrong, (*slip.would_do, reading)) from None


def _read(figure: Figure, said: str) -> float:
    from shimstock.trade.numbers.quantity import parse

    return parse(said, unit=figure.measured_in, what=figure.name).value
