"""Everything that is told of a machine in a search: typed now, said in the search, read before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import suppress
from typing import TYPE_CHECKING

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.fault_search.said import meant
from shimstock.workshop.fault_search.seen import NOW, OF_READING, OF_SEARCH, ToldSeen
from shimstock.workshop.fault_search.words import CLEARED, NOT_SEEN, SEEN, THERE

if TYPE_CHECKING:
    from shimstock.trade.faults.network import Told
    from shimstock.trade.faults.readings import FromReading
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import FaultSaid, FaultSearch


def given(seen: Seen, row: FaultSearch | None, more: Told | None) -> tuple[ToldSeen, ...]:
    """Everything that is told, typed now first, then what the search says, then readings.

    Of what is told twice the first counts. What the book does not know any more is left out.
    """
    told = [*_typed(seen.book, more), *_said(seen, row), *_read(seen)]
    counting: dict[str, ToldSeen] = {}
    for each in told:
        counting.setdefault(each.about, each)
    return tuple(each if counting[each.about] is each else _stands_back(each) for each in told)


def told_of(told: Iterable[ToldSeen]) -> Told:
    """The same for the trade: only what counts."""
    from shimstock.trade.faults.network import Told

    counts = [each for each in told if each.counts]
    return Told(
        {each.key: each.said for each in counts if each.about.startswith("sign:")},
        {each.key: bool(each.said) for each in counts if each.about.startswith("cause:")},
    )


def _stands_back(told: ToldSeen) -> ToldSeen:
    from dataclasses import replace

    return replace(told, counts=False)


def _typed(book: Book, more: Told | None) -> Iterator[ToldSeen]:
    if more is None:
        return
    for key, said in more.findings.items():
        yield _told(book, f"sign:{key}", said, "", NOW, "typed now")
    for key, there in more.causes.items():
        yield _told(book, f"cause:{key}", there, "", NOW, "typed now")


def _said(seen: Seen, row: FaultSearch | None) -> Iterator[ToldSeen]:
    if row is None:
        return
    book = seen.book
    for each in seen.row.said_in_searches.filter(search=row.number, withdrawn=False):
        kind, _, key = each.about.partition(":")
        if key not in (book.signs if kind == "sign" else book.causes):
            continue
        with suppress(NotUnderstood):  # its figure has another unit since
            said = meant(book, each.about, each.said)
            yield _told(book, each.about, said, each.said, OF_SEARCH, _who(each))


def _who(each: FaultSaid) -> str:
    from django.utils.timezone import localdate

    day = localdate(each.at)
    return f"{each.by}, {day.day} {day:%b %Y}"


def _read(seen: Seen) -> Iterator[ToldSeen]:
    from shimstock.trade.faults.readings import from_readings

    measured = seen.measured[0].measured
    figures = seen.book.measures
    values = {
        key: (each.told_in(figures[key[0]].measured_in).value,)
        for key, each in measured.items()
        if key[0] in figures
    }
    for said in from_readings(seen.book, seen.now.verdicts, values):
        about = f"cause:{said.cause}" if said.cause else f"sign:{said.sign}"
        source = f"{_figure(seen.book, said)}: {said.says}"
        yield _told(seen.book, about, said.said, "", OF_READING, source, said.figure)


def _figure(book: Book, said: FromReading) -> str:
    from shimstock.workshop.wording import figure_named

    return figure_named(book, said.figure, "")


def _told(
    book: Book,
    about: str,
    said: bool | float,
    typed: str,
    comes_from: str,
    source: str,
    figure: str = "",
) -> ToldSeen:
    kind, _, key = about.partition(":")
    thing = book.signs[key] if kind == "sign" else book.causes[key]
    return ToldSeen(
        about=about,
        key=key,
        name=thing.name,
        mark=thing.mark or "",
        said=said,
        says=typed or _in_words(book, kind, key, said),
        comes_from=comes_from,
        source=source,
        figure=figure,
    )


def _in_words(book: Book, kind: str, key: str, said: bool | float) -> str:
    if isinstance(said, bool):
        yes, no = (SEEN, NOT_SEEN) if kind == "sign" else (THERE, CLEARED)
        return yes if said else no
    figure = book.measures[book.signs[key].figure or ""]
    return f"{said:.4g} {figure.measured_in}"
