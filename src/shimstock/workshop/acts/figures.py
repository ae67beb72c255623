"""Figures and torques of the book corrected one by one, from the page that the maker printed."""

from datetime import datetime
from typing import Any

from shimstock.trade.machine.book import Book, Fasteners
from shimstock.trade.machine.corrected import corrected
from shimstock.trade.machine.sheet import BookErrors, Problem
from shimstock.trade.machine.typed_figure import (
    FIELDS,
    Typed,
    as_typed,
    fastening_typed,
    fastening_written,
    faults,
    understood,
)
from shimstock.trade.measure.far_off import check_figure, check_torque
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import HardlyMeant
from shimstock.trade.numbers.quantity import parse
from shimstock.workshop.acts.machines import give_book
from shimstock.workshop.books import book_from, book_of
from shimstock.workshop.find import find_figure, find_joint
from shimstock.workshop.ledger import writing
from shimstock.workshop.models import DiaryEntry, Machine
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.wording import count_of, figure_named, joint_named


def correct_figure(
    *,
    machine: str | Machine,
    figure: str,
    typed: Typed,
    who: str,
    note: str = "",
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Correct a figure in a machine's book, and judge its readings by it.

    What comes from a starter stays in the starter: the machine's own book is given an entry that
    holds only what is changed. The starters stay as the machine keeps them.
    typed: new, limit and page as a book writes them; an empty one is taken away; what is not typed
    stays. note: where the figures are from. meant: keeps what a reading of it could hardly be.
    Raises NotFound for an unknown figure; NotUnderstood, NotPossible or BookErrors for what no book
    can say; HardlyMeant for what looks like a slip; Refused where nothing would change.
    """
    with writing("correct figure", who=who, machine=machine, at=at) as pen:
        key = find_figure(pen.book, figure)
        text = corrected_text(pen.machine, pen.book, key, typed, meant=meant)
        row = pen.machine
        name = figure_named(pen.book, key, "")
        was = as_typed(pen.book.measures[key])
        changed = give_book(pen, text, row.book_name, row.starters)
        now = as_typed(book_of(row).measures[key])
        pen.says = (
            f"Corrected {name} in the book: {_told(was, now)}"
            f"{f' ({note.strip()})' if note.strip() else ''}; "
            f"{count_of(changed, 'verdict')} changed with it."
        )
    return pen.entry


def corrected_text(
    machine: Machine, book: Book, key: str, typed: Typed, *, meant: bool = False
) -> str:
    """The text of a machine's book with a figure corrected.

    meant: keeps what a reading could hardly be; the range that the book held readings to is then
    taken away, since it follows from the new figures.
    Raises NotUnderstood or NotPossible for what cannot be written; HardlyMeant for what looks like
    a slip; Refused where it changes nothing.
    """
    fields: dict[str, Any] = understood(book.measures[key], typed)
    if not fields:
        raise Refused([f"The book says that of {book.measures[key].name} already."])
    try:
        check_figure(book.measures[key], fields)
    except HardlyMeant:
        if not meant:
            raise
        fields["plausible"] = None
    section = "figures" if key in book.figures else "settings"
    return corrected(machine.book_text, section, key, fields)


def correct_torque(
    *,
    machine: str | Machine,
    joint: str,
    number: int,
    torque: str,
    page: str,
    who: str,
    note: str = "",
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Correct how tight a fastening of a joint is in a machine's book, and its page there.

    number: which fastening of the joint, from 1. torque: with its unit, or in the unit of now.
    page: of the maker's book; empty for a stand-in. note: where it is from. meant: keeps what is
    far from the torque of now.
    Raises NotFound for an unknown joint or fastening; NotUnderstood, NotPossible or BookErrors for
    what no book can say; HardlyMeant for what looks like a slip; Refused where nothing would
    change.
    """
    with writing("correct torque", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        text = torque_text(pen.machine, pen.book, key, number, torque, page, meant=meant)
        row = pen.machine
        give_book(pen, text, row.book_name, row.starters)
        now = book_of(row).joints[key].fasteners[number - 1]
        tight = now.torque.typed if now.torque else "no torque"
        on = f"page {now.page}" if now.page is not None else "a stand-in"
        from_ = f" ({note.strip()})" if note.strip() else ""
        pen.says = f"Corrected {joint_named(pen.book, key)} in the book: {tight}, {on}{from_}."
    return pen.entry


def torque_text(
    machine: Machine,
    book: Book,
    key: str,
    number: int,
    torque: str,
    page: str,
    *,
    meant: bool = False,
) -> str:
    """The text of a machine's book with a fastening of a joint corrected.

    meant: keeps what is far from the torque of now.
    Raises NotFound, NotUnderstood or NotPossible; HardlyMeant for what looks like a slip; Refused
    where it changes nothing.
    """
    fasteners = book.joints[key].fasteners
    if not 1 <= number <= len(fasteners):
        known = [str(each) for each in range(1, len(fasteners) + 1)]
        raise NotFound("fastening", str(number), known, f" at {joint_named(book, key)}")
    written = [fastening_written(each) for each in fasteners]
    new = [*written]
    new[number - 1] = fastening_typed(fasteners[number - 1], torque, page)
    if new == written:
        raise Refused([f"The book says that of {joint_named(book, key)} already."])
    if not meant:
        _check_torque(fasteners[number - 1], new[number - 1])
    fields = {"fasteners": new[0] if len(new) == 1 else new}
    return corrected(machine.book_text, "joints", key, fields)


def _check_torque(now: Fasteners, written: dict[str, Any]) -> None:
    """Ask about a torque far from the one of now; where there is none, any will do."""
    if now.torque is not None and (text := written.get("torque")):
        check_torque(now.torque, text, parse(text, unit=now.torque.unit))


def faults_at_fields(machine: Machine, book: Book, key: str, typed: Typed) -> dict[str, str]:
    """What is wrong with a correction, at the field at which it can be mended; all at once."""
    if found := faults(book.measures[key], typed):
        return {name: str(fault) for name, fault in found.items()}
    try:
        text = corrected_text(machine, book, key, typed, meant=True)
        book_from(text, machine.book_name, machine.starters)
    except BookErrors as errors:
        at = {
            _field(problem): f"{problem.wrong}. {problem.would_do}" for problem in errors.problems
        }
        return {name: said.strip() for name, said in at.items() if name}
    except (Refused, NotPossible):
        return {}
    return {}


def _field(problem: Problem) -> str:
    """The field that a fault is about; "" for another than can be typed."""
    words = (problem.where.rpartition(" > ")[2], *problem.wrong.split())
    return next((word for word in words if word in FIELDS), "")


def _told(was: dict[str, str], now: dict[str, str]) -> str:
    changed = [name for name in now if now[name] != was[name]]
    return ", ".join(_change(name, was[name], now[name]) for name in changed) or "written anew"


def _change(name: str, was: str, now: str) -> str:
    if name == "page":
        return f"page {now}" if now else "no page, so a stand-in figure"
    return f"{name} {now or 'none'} (was {was or 'none'})"
