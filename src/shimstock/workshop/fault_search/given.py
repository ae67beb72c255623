"""Everything that is told of a machine in a search: typed now, said in the search, read before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from datetime import datetime
from typing import TYPE_CHECKING

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.fault_search.said import meant
from shimstock.workshop.fault_search.seen import NOW, OF_READING, OF_SEARCH, ToldSeen
from shimstock.workshop.fault_search.words import CLEARED, NOT_SEEN, SEEN, THERE

if TYPE_CHECKING:
    from shimstock.trade.faults.network import Told
    from shimstock.trade.faults.readings import FromReading
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.state import FigureKey, VerdictNow
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import FaultSearch

Said = tuple[str, str, str, datetime]
"""About what, what was said, by whom and when."""


def given(seen: Seen, row: FaultSearch | None, more: Told | None) -> tuple[ToldSeen, ...]:
    """Everything that is told, typed now first, then what the search says, then readings.

    Of what is told twice the first counts. What the book does not know any more is left out.
    """
    said, put_right = _kept(seen, row)
    told = [*_typed(seen.book, more), *_said(seen.book, said), *_read(seen, put_right)]
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


def _kept(seen: Seen, row: FaultSearch | None) -> tuple[list[Said], dict[str, datetime]]:
    """What was said in a search, and when causes were put right on the machine; in one SELECT."""
    from django.db.models import Value

    found = seen.row.faults_found.filter(withdrawn=False).annotate(what=Value(""))
    number = row.number if row is not None else 0  # searches are counted from one
    said = seen.row.said_in_searches.filter(search=number, withdrawn=False).order_by()
    rows = said.values_list("about", "said", "by", "at").union(
        found.order_by().values_list("cause", "what", "by", "at"), all=True
    )
    kept = sorted(rows, key=lambda each: each[3])
    put_right = {cause: at for cause, what, _, at in kept if not what}
    return [each for each in kept if each[1]], put_right


def _said(book: Book, kept: Iterable[Said]) -> Iterator[ToldSeen]:
    for about, typed, by, at in kept:
        kind, _, key = about.partition(":")
        if key not in (book.signs if kind == "sign" else book.causes):
            continue
        with suppress(NotUnderstood):  # its figure has another unit since
            yield _told(book, about, meant(book, about, typed), typed, OF_SEARCH, _who(by, at))


def _who(by: str, at: datetime) -> str:
    from django.utils.timezone import localdate

    day = localdate(at)
    return f"{by}, {day.day} {day:%b %Y}"


def _read(seen: Seen, put_right: Mapping[str, datetime]) -> Iterator[ToldSeen]:
    from shimstock.trade.faults.readings import from_readings

    measured = seen.measured[0].measured
    figures = seen.book.measures
    values = {
        key: (each.told_in(figures[key[0]].measured_in).value,)
        for key, each in measured.items()
        if key[0] in figures
    }
    verdicts = {**_of_chains(seen), **seen.now.verdicts}
    for said in from_readings(seen.book, verdicts, values):
        if not said.after_work and _put_right_since(seen, said, put_right):
            continue
        about = f"cause:{said.cause}" if said.cause else f"sign:{said.sign}"
        source = f"{_figure(seen.book, said)}: {said.says}"
        yield _told(seen.book, about, said.said, "", OF_READING, source, said.figure)


def _of_chains(seen: Seen) -> dict[FigureKey, VerdictNow]:
    """The verdicts on links of chains that were parted by holding one shaft after another."""
    from shimstock.trade.machine.state import VerdictNow
    from shimstock.trade.machine.words import Verdict
    from shimstock.workshop.trains import links_parted

    found = {}
    for stage, link in links_parted(seen):
        if link.verdict is not Verdict.NOT_MEASURED and link.judged is not None:
            piece = seen.book.parts[seen.book.measures[link.figure].of].instances[0]
            found[(link.figure, piece, stage)] = VerdictNow(link.verdict, link.says, "")
    return found


def _put_right_since(seen: Seen, said: FromReading, put_right: Mapping[str, datetime]) -> bool:
    """Whether a reading as found is of a fault put right since: it is to be read again."""
    causes = {said.cause} if said.cause else set(seen.book.signs[said.sign].causes)
    times = [at for cause, at in put_right.items() if cause in causes]
    if not times or said.said is False:
        return False
    derive = seen.book.measures[said.figure].derive
    figures = {said.figure, *(derive.sources if derive else ())}
    read = [at for (figure, _, _), at in seen.read_at.items() if figure in figures]
    return not read or max(read) <= max(times)


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
