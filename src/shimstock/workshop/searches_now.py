"""Searches for a fault as they stand: which go on, and what they left standing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime
from typing import TYPE_CHECKING, NamedTuple

from django.db.models import CharField, Value
from django.db.models.functions import Concat
from django.utils import timezone

from shimstock.trade.faults.forbidden import shows
from shimstock.trade.machine.state import SearchNow
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.fault_search.said import meant
from shimstock.workshop.fault_search.words import CAUSE, CLEARED, NOT_SEEN, SIGN, THERE
from shimstock.workshop.models import FaultFound, FaultSaid, FaultSearch

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.models import Machine

A_SEARCH, SAID, PUT_RIGHT = "search", "said", "put right"
"""What a row of searches is: a search, something said in one, or a cause that was put right."""


class _Row(NamedTuple):
    """A search, something said in one, or a cause that was put right.

    search: its number; None for what was put right outside of any. about: of a search in words,
    else sign:KEY or cause:KEY. says: how a search ended, or what was said.
    """

    machine: int
    search: int | None
    about: str
    says: str
    at: datetime
    kind: str


def rows_of_searches(machines: Sequence[Machine]) -> dict[int, list[_Row]]:
    """What is kept of searches on machines, by their rows' numbers, oldest first; in one SELECT."""
    of_machines = {"machine__in": [machine.pk for machine in machines], "withdrawn": False}
    searches = FaultSearch.objects.filter(**of_machines).order_by()
    said = FaultSaid.objects.filter(**of_machines).exclude(said=NOT_SEEN).order_by()
    right = FaultFound.objects.filter(**of_machines).order_by()
    told = said.annotate(kind=Value(SAID))
    done = right.annotate(
        kind=Value(PUT_RIGHT), about=Concat(Value(CAUSE), "cause"), says=Value("", CharField())
    )
    rows = (
        searches.annotate(kind=Value(A_SEARCH))
        .values_list("machine_id", "number", "about", "ended", "at", "kind")
        .union(
            told.values_list("machine_id", "search", "about", "said", "at", "kind"),
            done.values_list("machine_id", "search", "about", "says", "at", "kind"),
            all=True,
        )
    )
    found: dict[int, list[_Row]] = {machine.pk: [] for machine in machines}
    for each in sorted((_Row(*row) for row in rows), key=lambda row: row.at):
        found[each.machine].append(each)
    return found


def searches_now(rows: Iterable[_Row], book: Book) -> tuple[SearchNow, ...]:
    """A machine's searches that go on, or have left something standing.

    What was said of a cause last counts, in whichever search; what the book does not know is left
    out. rows: as of `rows_of_searches`.
    """
    kept = list(rows)
    found = (_search(row, kept, book) for row in kept if row.kind == A_SEARCH)
    return tuple(each for each in found if each.goes_on or each.found or each.seen)


def _search(row: _Row, kept: list[_Row], book: Book) -> SearchNow:
    said = [each for each in kept if each.kind == SAID and each.search == row.search]
    there = [each for each in _there(kept) if each.search == row.search]
    return SearchNow(
        number=row.search or 0,
        about=row.about,
        on=_day(row.at),
        goes_on=not row.says,
        found=_keys(there, CAUSE, book.causes),
        seen=tuple(
            key for each in said for key in _keys([each], SIGN, book.signs)
            if _shows(book, key, each.says) and not _explained(book, key, each, kept)
        ),
        cleared=_keys((each for each in said if each.says == CLEARED), CAUSE, book.causes),
    )  # fmt: skip


def _there(kept: list[_Row]) -> Iterator[_Row]:
    """Causes that were last said to be there, and were not put right then or since."""
    said = (row for row in kept if row.kind == SAID and row.about.startswith(CAUSE))
    last = {row.about: row for row in said}
    right = {row.about: row.at for row in kept if row.kind == PUT_RIGHT}
    for about, row in last.items():
        if row.says == THERE and not (about in right and right[about] >= row.at):
            yield row


def _shows(book: Book, sign: str, says: str) -> bool:
    """Whether a sign is seen by what was said; a number that means nothing any more says so."""
    try:
        return shows(book, sign, meant(book, SIGN + sign, says))
    except NotUnderstood:
        return True


def _explained(book: Book, sign: str, seen: _Row, kept: list[_Row]) -> bool:
    """Whether a cause of a sign was put right since it was seen, and the search for it was over.

    A search that goes on, or was given up, may be after something else still. Where the cause is
    none of the book's, somebody says in the search that the sign is not seen any more.
    """
    over = {row.search for row in kept if row.kind == A_SEARCH and row.says == FaultSearch.FOUND}
    causes = {CAUSE + cause for cause in book.signs[sign].causes}
    return any(
        row.about in causes and row.at >= seen.at and row.search in {None, *over}
        for row in kept
        if row.kind == PUT_RIGHT
    )


def _keys(rows: Iterable[_Row], kind: str, known: Iterable[str]) -> tuple[str, ...]:
    keys = [each.about.removeprefix(kind) for each in rows if each.about.startswith(kind)]
    return tuple(key for key in keys if key in set(known))


def _day(at: datetime) -> date:
    return timezone.localdate(at)
