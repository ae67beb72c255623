"""The play of a whole train: too much in all by itself calls none of its links worn."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace

from shimstock.trade.machine.book import Book, Train
from shimstock.trade.machine.state import FigureKey
from shimstock.trade.machine.words import TOLD_APART, TOO_MUCH, Stage, Verdict
from shimstock.trade.measure.judge import Judged
from shimstock.trade.measure.named import listed
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.working import Working

HOLD_EACH = "Hold one shaft after another and read again: what goes away belongs behind it"
"""What settles where the play of a train is."""


def as_a_sum(train: Train, judged: Judged, parted: Collection[str] = ()) -> Judged:
    """A verdict on the play of a whole train, which by itself never calls a part worn.

    parted: names of the links that holding or reading tells from the others. Once that is all of
    them, each stands for itself, and nothing is to be settled or done about the whole.
    """
    names = [link.name for link in train.links]
    says = judged.says.replace(str(Verdict.WORN_OUT), TOO_MUCH)
    alone = f"It is the play of {', '.join(names)} together: by itself it calls none of them worn."
    apart = len(names) > 1 and {*names} <= {*parted}
    return replace(
        judged,
        how=lambda: _with_note(judged.working, alone),
        verdict=Verdict.BORDERLINE,
        says=f"{says}; {_where_it_is(names, parted)}",
        settles="" if apart else HOLD_EACH,
        remedy="" if apart else judged.remedy,
    )


def read_along(train: Train) -> set[str]:
    """The figures of a train: the whole, those of its links, and the whole with a shaft held."""
    held = (link.hold.figure for link in train.links if link.hold)
    links = (link.figure for link in train.links)
    return {train.figure, *links, *(figure for figure in held if figure)}


def parted_by(
    book: Book, train: Train, readings: Mapping[FigureKey, Reading], stage: Stage
) -> set[str]:
    """Names of the links of a train that what was read tells from the others.

    readings: everything that was read on the machine, the whole play among it.
    """
    return set(_parted(book, train, readings, stage))


def _parted(
    book: Book, train: Train, readings: Mapping[FigureKey, Reading], stage: Stage
) -> Iterator[str]:
    def read(figure: str | None) -> bool:
        pieces = book.parts[book.measures[figure].of].instances if figure else ()
        return any((figure, piece, stage) in readings for piece in pieces)

    held = [read(link.hold.figure if link.hold else None) for link in train.links]
    held[0] = True  # the whole play itself
    for link, before, behind in zip(train.links, held, [*held[1:], True], strict=True):
        if (before and behind) or read(link.figure):
            yield link.name


def _where_it_is(names: Sequence[str], parted: Collection[str]) -> str:
    """What is known of where the play of a train is: of all its links, by name, or of some."""
    if len(names) == 1:
        return f"it is the play of {names[0]} alone"
    if not parted:
        return f"the whole does not tell which of its {len(names)} places it is in"
    left = [name for name in names if name not in parted]
    if not left:
        return f"{TOLD_APART}: see its chain"
    known = [name for name in names if name in parted]
    return f"parted from the others: {listed(known, 'and')}; not yet parted: {listed(left, 'and')}"


def _with_note(working: Working, text: str) -> Working:
    w = Working()
    w.extend(working)
    w.note(text)
    return w
