"""Books of machines, each read from the copy that the machine keeps of the whole of it."""

from collections.abc import Mapping
from functools import lru_cache

from django.db.models import Q

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.merge import difference
from shimstock.trade.machine.reading import read_book
from shimstock.trade.machine.sheet import Problem, read_sheet
from shimstock.trade.machine.starters import starter_names, starter_text
from shimstock.trade.measure.far_off import far_from_starter
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


def doubts(text: str, name: str, starters: Starters) -> tuple[Problem, ...]:
    """Figures of a faultless book that can hardly be those of the starter it lies over.

    text, name: the book's text and its file's name. starters: those that it extends.
    """
    below = book_from(text, name, starters).extends
    if below is None:
        return ()
    its_own = {each: kept for each, kept in starters.items() if each != below}
    base = book_from(starters[below], below, its_own)
    return tuple(far_from_starter(text, name, base)) if base.measures else ()


def is_starter(text: str, name: str) -> bool:
    """Whether a book's text is a starter as it is installed, with nothing of a person's own."""
    return name in starter_names() and starter_text(name) == text


def over_starter(machine: str, starter: str, own: Mapping[str, object] | None = None) -> str:
    """The text of a machine's own book that says nothing but what it extends, and what is its own.

    machine: its short name. own: sections of entries that differ from the starter's.
    """
    import yaml

    fields = {"book": machine, "extends": starter, **(own or {})}
    return yaml.safe_dump(fields, allow_unicode=True, sort_keys=False, width=10_000)


def newer_starters(machine: Machine) -> tuple[str, ...]:
    """Starters that are installed today with another text than the machine took of them.

    A machine is given them by changing its book, never unasked.
    """
    kept = dict(machine.starters)
    if machine.book_name in starter_names() and not is_starter(
        machine.book_text, machine.book_name
    ):
        kept[machine.book_name] = _as_given(machine)
    installed = set(starter_names())
    return tuple(
        name for name, text in kept.items() if name in installed and starter_text(name) != text
    )


def own_text(machine: Machine) -> tuple[str, str]:
    """The text and file name of what is a machine's own, to lie over the starters of today.

    A machine that was given a starter's whole text has in it what was corrected since: only that
    is its own.
    """
    if machine.book_name not in starter_names():
        return machine.book_text, machine.book_name
    was, now = (
        read_sheet(text, machine.book_name).data for text in (_as_given(machine), machine.book_text)
    )
    changed = difference(was, now).items()
    own = {name: each for name, each in changed if name not in ("book", "extends")}
    return over_starter(machine.slug, machine.book_name, own), f"{machine.slug}.yaml"


def _as_given(machine: Machine) -> str:
    """The text of the starter that a machine was last given whole, before it was corrected.

    Until starters were laid below what is a machine's own, one was given whole by its name. What
    was typed into a form is a person's own.
    """
    from shimstock.workshop.diary_told import undone_by

    undoings = machine.diary.filter(undoes__isnull=False).order_by("-pk")
    undone = undone_by(undoings.values_list("pk", "undoes"))
    by_name = Q(act="add machine") | Q(act="change book", sent__isnull=True)
    given = machine.diary.filter(by_name).exclude(pk__in=undone).order_by("-pk")
    rows = (row for entry in given for row in entry.after.values())
    return next((str(row["book_text"]) for row in rows if "book_text" in row), machine.book_text)


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
