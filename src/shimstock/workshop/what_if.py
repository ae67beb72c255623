"""What a book would change of what is written down about a machine, before it is taken."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import unified_diff
from itertools import islice

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.sheet import Problem
from shimstock.trade.machine.state import FigureKey
from shimstock.trade.machine.typed_figure import Typed
from shimstock.workshop.acts.figures import corrected_text, torque_text
from shimstock.workshop.acts.machines import check_fits
from shimstock.workshop.books import Starters, book_from, doubts, starters_today
from shimstock.workshop.judging import Opinions, differing, opinions, readings_of, verdict_rows
from shimstock.workshop.models import Machine, VerdictRow
from shimstock.workshop.wording import figure_named


@dataclass(frozen=True)
class WouldChange:
    """A verdict that another book would change.

    was, then: the trade's word, "" for none; was_says, then_says: the verdict in one line.
    """

    figure: str
    piece: str
    stage: str
    name: str
    was: str
    was_says: str
    then: str
    then_says: str

    @property
    def told(self) -> str:
        """What becomes of it in a line."""
        was, then = (word or "no verdict" for word in (self.was, self.then))
        becomes = f"stays {was}" if was == then else f"{was} becomes {then}"
        return f"{self.name}, {self.stage}: {becomes}"


@dataclass(frozen=True)
class Look:
    """What another text of a book would bring, all of it before anything is written.

    lines: the lines that it takes away (-) and adds (+). starters: those of which it brings another
    text. figures, stand_in: how many there would be. doubts: figures far from the starter's.
    """

    title: str
    lines: tuple[str, ...]
    starters: tuple[str, ...]
    figures: int
    stand_in: int
    changes: tuple[WouldChange, ...]
    doubts: tuple[Problem, ...] = ()


def look_at(machine: Machine, text: str, name: str, starters: Starters | None = None) -> Look:
    """Look at another text of a machine's book before it is taken.

    text, name: the book's text and its file's name. starters: those that it extends; as they are
    installed today if not given.
    Raises BookErrors for a faulty book; Refused where readings would lose their figure or places.
    """
    kept = starters_today(text, name) if starters is None else starters
    book = book_from(text, name, kept)
    check_fits(machine, book)
    rows, found = verdict_rows(machine), opinions(book, readings_of(machine))
    return Look(
        title=book.title,
        lines=tuple(_lines(machine.book_text, text)),
        starters=tuple(each for each, now in kept.items() if machine.starters.get(each) != now),
        figures=len(book.measures),
        stand_in=sum(figure.stand_in for figure in book.measures.values()),
        changes=tuple(_change(book, key, rows, found) for key in differing(rows, found)),
        doubts=doubts(text, name, kept),
    )


def look_at_figure(
    machine: Machine, book: Book, key: str, typed: Typed, *, meant: bool = False
) -> Look:
    """See what a correction would change before it is written; nothing is written.

    meant: as for correcting. Raises what correcting raises.
    """
    text = corrected_text(machine, book, key, typed, meant=meant)
    return look_at(machine, text, machine.book_name, machine.starters)


def look_at_torque(
    machine: Machine,
    book: Book,
    joint: str,
    number: int,
    torque: str,
    page: str,
    *,
    meant: bool = False,
) -> Look:
    """See what a corrected torque would change before it is written; nothing is written.

    meant: as for correcting. Raises what correcting raises.
    """
    text = torque_text(machine, book, joint, number, torque, page, meant=meant)
    return look_at(machine, text, machine.book_name, machine.starters)


def _lines(old: str, new: str) -> Iterator[str]:
    compared = unified_diff(old.splitlines(), new.splitlines(), n=0, lineterm="")
    return (line for line in islice(compared, 2, None) if not line.startswith("@@"))


def _change(
    book: Book, key: FigureKey, rows: Mapping[FigureKey, VerdictRow], found: Opinions
) -> WouldChange:
    figure, piece, stage = key
    was, then = rows.get(key), found.get(key)
    return WouldChange(
        figure=figure,
        piece=piece,
        stage=str(stage),
        name=figure_named(book, figure, piece),
        was=was.verdict if was else "",
        was_says=was.says if was else "",
        then=str(then.verdict or "") if then else "",
        then_says=then.says if then else "",
    )
