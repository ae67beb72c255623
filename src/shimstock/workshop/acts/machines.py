"""Machines: booked in with a book, and given a better book."""

from collections.abc import Container, Iterator, Mapping
from datetime import datetime

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.figures import At
from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.numbers.quantity import kind
from shimstock.workshop.books import (
    Starters,
    book_from,
    book_of,
    doubts,
    is_starter,
    knows_piece,
    over_starter,
    own_text,
    starters_today,
)
from shimstock.workshop.judging import rejudge
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, Machine, ReadingRow
from shimstock.workshop.refused import Refused, refuse
from shimstock.workshop.wording import (
    as_short_name,
    count_of,
    figure_named,
    is_short_name,
    listed,
)


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
    """Book a machine in, with a full copy of the book it is made to and of its starters.

    A starter by itself becomes a book of the machine's own that extends it, so that what is
    corrected stays apart from it.
    slug: its short name, small letters, digits and hyphens. book_name: the book's file name.
    serials: what is stamped where.
    Raises BookErrors for a faulty book, Refused for a name that is taken or cannot serve.
    """
    with writing("add machine", who=who, at=at) as pen:
        _check_name(slug, name)
        if is_starter(book_text, book_name):
            book_text, book_name = over_starter(slug, book_name), f"{slug}.yaml"
        starters = starters_today(book_text, book_name or "book")
        book = book_from(book_text, book_name or "book", starters)
        pen.machine = Machine(
            slug=slug,
            name=name.strip(),
            serials=dict(serials or {}),
            book_name=book_name or book.book,
            book_text=book_text,
            starters=starters,
            added_at=pen.at,
            notes=notes,
        )
        pen.save(pen.machine)
        doubtful = _doubts_told(book, book_text, pen.machine.book_name, starters)
        pen.says = f"Booked in {name.strip()}, made to {book.title}.{doubtful}"
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

    The starters that it extends are taken as they are installed today; where they are others than
    until now, the diary says so. A starter by itself is laid below what is the machine's own.
    Raises BookErrors for a faulty book, Refused where readings would lose their figure or places.
    """
    with writing("change book", who=who, machine=machine, at=at) as pen:
        name = book_name or pen.machine.book_name
        if is_starter(book_text, name):
            book_text, name = _over(pen.machine, name)
        starters = starters_today(book_text, name)
        with_ = _starters_told(pen.machine.starters, starters)
        changed = count_of(give_book(pen, book_text, name, starters), "verdict")
        doubtful = _doubts_told(book_of(pen.machine), book_text, name, starters)
        pen.says = f"Changed the book{with_}; {changed} changed with it.{doubtful}"
    return pen.entry


def _over(machine: Machine, starter: str) -> tuple[str, str]:
    """A machine's book laid over a starter: with what is its own, where it lies over that now."""
    if starter in (*machine.starters, machine.book_name):
        return own_text(machine)
    return over_starter(machine.slug, starter), f"{machine.slug}.yaml"


def give_book(pen: Pen, text: str, name: str, starters: Starters) -> int:
    """Give the act's machine another text of its book; how many verdicts changed with it.

    text, name, starters: the book's text, its file's name, and those that it extends.
    Raises BookErrors for a faulty book, Refused where readings would lose their figure or places.
    """
    book = book_from(text, name, starters)
    check_fits(pen.machine, book)
    pen.machine.book_text, pen.machine.book_name = text, name
    pen.machine.starters = dict(starters)
    pen.save(pen.machine)
    return len(rejudge(pen, book))


def check_fits(machine: Machine, book: Book) -> None:
    """Refuse a book by which something that is written down about a machine would lose its sense.

    Raises Refused, which names all of it.
    """
    check_all_kept(machine, book)
    _check_places(machine, _as_it_was(machine), book)


def _starters_told(old: Starters, new: Starters) -> str:
    todays = [name for name, text in new.items() if old.get(name) != text]
    left = [name for name in old if name not in new]
    told = f", with today's {_starter(todays)}" if todays else ""
    return f"{told}, without the {_starter(left)}" if left else told


def _doubts_told(book: Book, text: str, name: str, starters: Starters) -> str:
    """Which figures of a book lie far from the starter's; "" where none does."""
    keys = dict.fromkeys(each.where.split(" > ")[1] for each in doubts(text, name, starters))
    if not keys:
        return ""
    far = listed(figure_named(book, key, "") for key in keys)
    return f" Far from the starter's, so look whether a digit slipped: {far}."


def _starter(names: list[str]) -> str:
    return f"{'starter' if len(names) == 1 else 'starters'} {listed(names)}"


def _check_name(slug: str, name: str) -> None:
    if not is_short_name(slug):
        would = as_short_name(slug) or "grey-mare"
        raise Refused(
            [f"{slug!r} cannot be a short name: small letters, digits and hyphens do; {would} would"
             " do"]
        )  # fmt: skip
    if not name.strip():
        raise Refused(["The machine has no name: say what you call it."])
    if Machine.objects.filter(slug=slug, withdrawn=False).exists():
        raise Refused([f"A machine named {slug!r} is here already: choose another short name."])


def _as_it_was(machine: Machine) -> Book | None:
    """The book until now; None where a newer program does not understand the copy any more."""
    try:
        return book_of(machine)
    except BookErrors:
        return None


def _check_places(machine: Machine, old: Book | None, new: Book) -> None:
    """Refuse a book that would lay readings on other places, or take them for another quantity."""
    rows = ReadingRow.objects.filter(machine=machine, withdrawn=False).order_by("pk")
    read = {row.figure: row for row in rows}
    refuse(
        reason
        for key, row in sorted(read.items())
        for reason in _against_places(
            old.measures.get(key) if old else None, new.measures[key], row
        )
    )


def _against_places(old: Figure | None, new: Figure, row: ReadingRow) -> Iterator[str]:
    """What stands against a reading under a figure of another book.

    old: the figure by which it was read, where that is known still.
    """
    name, would = (old or new).name, "leave it so, or undo the readings first."
    if kind(row.unit) != kind(new.measured_in):
        was, now = kind(row.unit), kind(new.measured_in)
        yield f"The figure {name} was read as a {was}, and is a {now} in this book: {would}"
    if old is not None and not _same_places(old.at, new.at):
        was, now = (_places(at) for at in (old.at, new.at))
        yield f"The figure {name} was read at {was}; in this book it is {now}: {would}"
    several = len(new.at.labels) if new.at else 1
    if old is None and len(row.values) != several and (new.at or new.judge != "mean"):
        was = count_of(len(row.values), "place")
        yield f"The figure {name} was read at {was}; in this book it is {_places(new.at)}: {would}"


def _places(at: At | None) -> str:
    return ", ".join(at.labels) if at else "one place"


def _same_places(old: At | None, new: At | None) -> bool:
    """Whether readings keep their places: as many, in the same order, under whatever names."""
    shapes = [
        (len(at.depths), len(at.across), len(at.places)) if at else (0, 0, 1) for at in (old, new)
    ]
    moved = old and new and old.labels != new.labels and set(old.labels) == set(new.labels)
    return shapes[0] == shapes[1] and not moved


def check_all_kept(machine: Machine, book: Book) -> None:
    """Refuse a book that does not know something already written down about the machine.

    Raises Refused, which names all of it.
    """
    readings = ReadingRow.objects.filter(machine=machine, withdrawn=False)
    read = set(readings.values_list("figure", "piece"))
    pieces = set(machine.pieces.values_list("part", "piece"))
    pieces |= {(book.measures[key].of, piece) for key, piece in read if key in book.measures}
    refuse(
        f"The {what} has something written down about it and is not in this book: leave it in."
        for what in (
            *_gone("joint", set(machine.joints.values_list("joint", flat=True)), book.joints),
            *_gone("part", {part for part, _ in pieces}, book.parts),
            *_gone("figure", {figure for figure, _ in read}, book.measures),
            *(
                f"piece {piece!r} of {book.parts[part].name}"
                for part, piece in sorted(pieces)
                if part in book.parts and not knows_piece(book, part, piece)
            ),
        )
    )


def _gone(what: str, written: set[str], known: Container[str]) -> Iterator[str]:
    return (f"{what} {key!r}" for key in sorted(written) if key not in known)
