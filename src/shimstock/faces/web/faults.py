"""Faults of a book's text, each with its line and the lines around it."""

from __future__ import annotations

from dataclasses import dataclass

from shimstock.trade.machine.sheet import BookErrors, Problem
from shimstock.workshop.books import book_from


@dataclass(frozen=True)
class TextLine:
    """One line of the text. is_it: the fault stands here."""

    number: int
    text: str
    is_it: bool


@dataclass(frozen=True)
class Fault:
    """One fault. around: the lines about it; none where it stands in another text."""

    problem: Problem
    around: tuple[TextLine, ...]


def faults(text: str, name: str) -> list[Fault]:
    """Everything that is wrong in a book's text; name: of its file."""
    try:
        book_from(text, name)
    except BookErrors as errors:
        return with_lines(errors, text, name)
    return []


def with_lines(errors: BookErrors, text: str, name: str) -> list[Fault]:
    """Each fault of a text with the lines about it; name: of its file."""
    return [Fault(each, _around(each, text, name)) for each in errors.problems]


def _around(problem: Problem, text: str, name: str) -> tuple[TextLine, ...]:
    if problem.file != name:
        return ()
    lines, at = text.splitlines(), problem.line
    numbers = range(max(1, at - 1), min(len(lines), at + 1) + 1)
    return tuple(TextLine(number, lines[number - 1], number == at) for number in numbers)
