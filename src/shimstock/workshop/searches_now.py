"""Searches for a fault as they stand: which go on, and what they left standing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import TYPE_CHECKING, NamedTuple

from django.db.models import BooleanField, Exists, OuterRef, Value
from django.db.models.functions import Concat
from django.utils import timezone

from shimstock.trade.machine.state import SearchNow
from shimstock.workshop.fault_search.words import CAUSE, CLEARED, SEEN, SIGN, THERE
from shimstock.workshop.models import FaultFound, FaultSaid, FaultSearch

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.models import Machine

A_SEARCH = "search"
"""Stands for the row of a search among what was said in searches."""


class _Row(NamedTuple):
    """A search, or something said in one.

    about: of a search in words, else sign:KEY or cause:KEY. says: how a search ended, else what was
    said. put_right: whether a cause was put right since.
    """

    machine: int
    search: int
    about: str
    says: str
    at: datetime
    kind: str
    put_right: bool


def rows_of_searches(machines: Sequence[Machine]) -> dict[int, list[_Row]]:
    """What is kept of searches on machines, by their rows' numbers, oldest first; in one SELECT."""
    numbers = [machine.pk for machine in machines]
    searches = FaultSearch.objects.filter(machine__in=numbers, withdrawn=False).order_by()
    said = FaultSaid.objects.filter(
        machine__in=numbers, withdrawn=False, said__in=(SEEN, THERE, CLEARED)
    ).order_by()
    searches = searches.annotate(kind=Value(A_SEARCH), right=Value(False, BooleanField()))
    told = said.annotate(kind=Value("said"), right=_put_right_since())
    rows = searches.values_list(
        "machine_id", "number", "about", "ended", "at", "kind", "right"
    ).union(
        told.values_list("machine_id", "search", "about", "said", "at", "kind", "right"), all=True
    )
    found: dict[int, list[_Row]] = {number: [] for number in numbers}
    for each in sorted((_Row(*row) for row in rows), key=lambda row: row.at):
        found[each.machine].append(each)
    return found


def searches_now(rows: Iterable[_Row], book: Book) -> tuple[SearchNow, ...]:
    """A machine's searches that go on, or have left something standing.

    What was said of a cause last counts, in whichever search; what the book does not know is left
    out. rows: as of `rows_of_searches`.
    """
    kept = list(rows)
    last = {row.about: row for row in kept if row.about.startswith(CAUSE) and row.kind != A_SEARCH}
    there = [row for row in last.values() if row.says == THERE and not row.put_right]
    found = (_search(row, kept, there, book) for row in kept if row.kind == A_SEARCH)
    return tuple(each for each in found if each.goes_on or each.found or each.seen)


def _put_right_since() -> Exists:
    """That a cause was put right when it was said to be there, or later."""
    found = FaultFound.objects.filter(
        machine=OuterRef("machine"), withdrawn=False, at__gte=OuterRef("at")
    )
    return Exists(found.annotate(said=Concat(Value(CAUSE), "cause")).filter(said=OuterRef("about")))


def _search(row: _Row, kept: list[_Row], there: list[_Row], book: Book) -> SearchNow:
    said = [each for each in kept if each.kind != A_SEARCH and each.search == row.search]
    unexplained = row.says != FaultSearch.FOUND
    return SearchNow(
        number=row.search,
        about=row.about,
        on=_day(row.at),
        goes_on=not row.says,
        found=_keys((each for each in there if each.search == row.search), CAUSE, book.causes),
        seen=_keys((each for each in said if unexplained and each.says == SEEN), SIGN, book.signs),
        cleared=_keys((each for each in said if each.says == CLEARED), CAUSE, book.causes),
    )


def _keys(rows: Iterable[_Row], kind: str, known: Iterable[str]) -> tuple[str, ...]:
    keys = [each.about.removeprefix(kind) for each in rows if each.about.startswith(kind)]
    return tuple(key for key in keys if key in set(known))


def _day(at: datetime) -> date:
    return timezone.localdate(at)
