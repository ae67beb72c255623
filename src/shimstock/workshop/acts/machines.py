"""Machines: booked in with a book, and given a better book."""

import re
from collections.abc import Iterator, Mapping
from datetime import datetime

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.figures import At
from shimstock.trade.numbers.quantity import kind
from shimstock.workshop.books import book_from
from shimstock.workshop.judging import rejudge
from shimstock.workshop.ledger import writing
from shimstock.workshop.models import DiaryEntry, Machine, ReadingRow
from shimstock.workshop.refused import Refused, refuse
from shimstock.workshop.wording import count_of


def add_machine(
    *,
    slug: str,
    name: str,
    book_text: str,
    who: str,
    book_name: str = "",
    serials: Mapping[str, str] | None = None,
    notes: str = "",
    at: datetime | None = None,
) -> DiaryEntry:
    """Book a machine in, with a full copy of the book it is made to.

    slug: its short name, small letters, digits and hyphens. book_name: the book's file name.
    serials: what is stamped where.
    Raises BookErrors for a faulty book, Refused for a name that is taken or cannot serve.
    """
    with writing("add machine", who=who, at=at) as pen:
        _check_name(slug, name)
        book = book_from(book_text, book_name or "book")
        pen.machine = Machine(
            slug=slug,
            name=name.strip(),
            serials=dict(serials or {}),
            book_name=book_name or book.book,
            book_text=book_text,
            added_at=pen.at,
            notes=notes,
        )
        pen.save(pen.machine)
        pen.says = f"Booked in {name.strip()}, made to {book.title}."
    return pen.entry


def change_book(
    *,
    machine: str | Machine,
    book_text: str,
    who: str,
    book_name: str = "",
    at: datetime | None = None,
) -> DiaryEntry:
    """Give a machine a better copy of its book and judge all its readings by it.

    Raises BookErrors for a faulty book, Refused where readings would lose their figure or places.
    """
    with writing("change book", who=who, machine=machine, at=at) as pen:
        book = book_from(book_text, book_name or pen.machine.book_name)
        _check_all_kept(pen.machine, book)
        _check_places(pen.machine, pen.book, book)
        pen.machine.book_text = book_text
        pen.machine.book_name = book_name or pen.machine.book_name
        pen.save(pen.machine)
        changed = rejudge(pen, book)
        pen.says = f"Changed the book; {count_of(len(changed), 'verdict')} changed with it."
    return pen.entry


def _check_name(slug: str, name: str) -> None:
    if not re.fullmatch(r"[a-z0-9][a-z0-9-]{0,59}", slug):
        raise Refused([f"{slug!r} cannot be a short name: small letters, digits and hyphens do."])
    if not name.strip():
        raise Refused(["The machine has no name: say what you call it."])
    if Machine.objects.filter(slug=slug, withdrawn=False).exists():
        raise Refused([f"A machine named {slug!r} is here already: choose another short name."])


def _check_places(machine: Machine, old: Book, new: Book) -> None:
    """Refuse a book that would lay readings on other places, or take them for another quantity."""
    readings = ReadingRow.objects.filter(machine=machine, withdrawn=False)
    read = dict(readings.order_by("pk").values_list("figure", "unit"))
    refuse(
        reason
        for key, unit in sorted(read.items())
        for reason in _against_places(old.measures[key], new.measures[key], unit)
    )


def _against_places(old: Figure, new: Figure, unit: str) -> Iterator[str]:
    would = "leave it so, or undo the readings first."
    if kind(unit) != kind(new.measured_in):
        was, now = kind(unit), kind(new.measured_in)
        yield f"The figure {old.name} was read as a {was}, and is a {now} in this book: {would}"
    if not _same_places(old.at, new.at):
        was, now = (", ".join(at.labels) if at else "one place" for at in (old.at, new.at))
        yield f"The figure {old.name} was read at {was}; in this book it is {now}: {would}"


def _same_places(old: At | None, new: At | None) -> bool:
    """Whether readings keep their places: as many, in the same order, under whatever names."""
    shapes = [
        (len(at.depths), len(at.across), len(at.places)) if at else (0, 0, 1) for at in (old, new)
    ]
    moved = old and new and old.labels != new.labels and set(old.labels) == set(new.labels)
    return shapes[0] == shapes[1] and not moved


def _check_all_kept(machine: Machine, book: Book) -> None:
    """Refuse a book that does not know something already written down about the machine."""
    readings = ReadingRow.objects.filter(machine=machine, withdrawn=False)
    refuse(
        f"The {what} {key!r} has something written down about it and is not in this book: "
        "leave it in."
        for what, written, known in (
            ("joint", set(machine.joints.values_list("joint", flat=True)), set(book.joints)),
            ("part", set(machine.pieces.values_list("part", flat=True)), set(book.parts)),
            ("figure", set(readings.values_list("figure", flat=True)), set(book.measures)),
        )
        for key in sorted(written - known)
    )
