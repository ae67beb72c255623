"""A machine as it stands: what every page, command and paper looks up before it shows anything."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property
from threading import Lock
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from django.db.models import QuerySet

    from shimstock.trade.machine.book import Book, Caution
    from shimstock.trade.machine.state import FigureKey, MachineNow
    from shimstock.trade.measure.reading import Reading
    from shimstock.trade.measure.remedy import Remedy
    from shimstock.trade.measure.verdicts import Verdicts
    from shimstock.trade.reach.gates import GateView
    from shimstock.workshop.fault_search.view import SearchSeen
    from shimstock.workshop.file_opened import File
    from shimstock.workshop.models import DiaryEntry, Machine, ReadingRow
    from shimstock.workshop.standing import ToDo, Unsafe

    _Key = tuple[File, int, int, date]
    """The file that was opened, a machine's row, the last entry in its diary, and the day."""

DEFERS = "The maker's book, the local codes and licensed practice go before everything said here."
REMEMBERED = 128
"""How many machines a program keeps in mind as they stand."""


@dataclass(frozen=True)
class Seen:
    """A machine's row and how it stands now; what follows from that is worked out once.

    latest: number of the last entry in its diary.
    """

    row: Machine
    now: MachineNow
    latest: int = 0

    @property
    def book(self) -> Book:
        """The book it is made to."""
        return self.now.book

    @cached_property
    def gates(self) -> dict[str, GateView]:
        """Every gate as it stands."""
        from shimstock.trade.reach.gates import gate

        return {key: gate(self.now, key) for key in self.book.gates}

    @cached_property
    def standing(self) -> dict[str, Any]:
        """What there is to know before the next spanner, as plain values."""
        from shimstock.workshop.standing import standing

        return standing(self.now, self.to_do)

    @cached_property
    def to_do(self) -> tuple[ToDo, ...]:
        """What to do next, each with its place."""
        from shimstock.workshop.standing import to_do

        return to_do(self.now)

    @cached_property
    def unsafe(self) -> tuple[Unsafe, ...]:
        """What is not safe as it stands, each with its place."""
        from shimstock.workshop.standing import unsafe

        return unsafe(self.now)

    @cached_property
    def cautions(self) -> tuple[Caution, ...]:
        """What can hurt at the joints that stand open."""
        from shimstock.workshop.standing import cautions_open

        return cautions_open(self.now)

    @cached_property
    def made(self) -> dict[str, str]:
        """What pages have made of it, by name, to be shown again as long as it stands so."""
        return {}

    @cached_property
    def searched(self) -> dict[int, SearchSeen]:
        """Searches for a fault by number, as they were looked at last while it stands so."""
        return {}

    @cached_property
    def readings(self) -> dict[FigureKey, Reading]:
        """Everything that was read on it, as the trade takes it."""
        from shimstock.workshop.judging import trade_reading

        return {key: trade_reading(self.book, row) for key, row in self._read.items()}

    @property
    def read_at(self) -> dict[FigureKey, datetime]:
        """When each of its readings was taken."""
        return {key: row.at for key, row in self._read.items()}

    @cached_property
    def _read(self) -> dict[FigureKey, ReadingRow]:
        from shimstock.trade.machine.words import Stage
        from shimstock.workshop.judging import readings_of

        return {(row.figure, row.piece, Stage(row.stage)): row for row in readings_of(self.row)}

    @cached_property
    def measured(self) -> tuple[Verdicts, list[Remedy]]:
        """Everything that was read on it as it is judged today, and what to do about it."""
        return measured(self)


def see(machine: str) -> Seen:
    """Look at a machine. Raises NotFound."""
    from shimstock.workshop.find import find_machine

    # The row holds the whole book: it is fetched only where the machine is not remembered.
    latest = dict(_latest().filter(slug=machine.strip().lower()))
    if not latest:
        return see_row(find_machine(machine))
    return _as_they_stand(latest, _rows)[0]


def see_row(row: Machine) -> Seen:
    """Look at a machine whose row is at hand."""
    latest = row.diary.order_by("-pk").values_list("pk", flat=True).first() or 0
    return _as_they_stand({row.pk: latest}, lambda _: [row])[0]


def see_all() -> list[Seen]:
    """Look at every machine in the shed, in one SELECT for all that did not change."""
    return _as_they_stand(dict(_latest()), _rows)


def _latest() -> QuerySet[Machine, tuple[int, int]]:
    """The machines in the shed, each with the last entry in its diary; 0 for none."""
    from django.db.models import OuterRef, Subquery
    from django.db.models.functions import Coalesce

    from shimstock.workshop.models import DiaryEntry, Machine

    last = DiaryEntry.objects.filter(machine=OuterRef("pk")).order_by("-pk").values("pk")[:1]
    rows = Machine.objects.filter(withdrawn=False).annotate(last=Coalesce(Subquery(last), 0))
    return rows.values_list("pk", "last")


def _rows(numbers: list[int]) -> list[Machine]:
    from shimstock.workshop.models import Machine

    return list(Machine.objects.filter(pk__in=numbers))


def last_worked_on_first() -> list[str]:
    """The machines in the shed by their short names, that of the last entry in the diary first."""
    return list(_latest().order_by("-last", "slug").values_list("slug", flat=True))


def measured(seen: Seen) -> tuple[Verdicts, list[Remedy]]:
    """Everything that was read on a machine as it is judged today, and what to do about it."""
    from shimstock.trade.measure.remedies import remedies
    from shimstock.trade.measure.verdicts import verdicts

    judged = verdicts(seen.book, seen.readings)
    return judged, remedies(seen.book, judged, seen.now.pieces)


def kept(entry: DiaryEntry) -> dict[str, Any]:
    """A diary entry as plain values."""
    from django.utils.timezone import localtime

    return {
        "entry": entry.pk,
        "at": localtime(entry.at).isoformat(timespec="seconds"),
        "who": entry.who,
        "says": entry.says,
    }


def called(things: Mapping[str, Any], key: str) -> str:
    """A thing of the book in words: its name and mark."""
    thing = things[key]
    return f"{thing.name} ({thing.mark})" if thing.mark else str(thing.name)


def minutes(number: float) -> str:
    """Minutes, and hours beside them where there are many: 165 min (2 h 45)."""
    whole = round(number)
    return f"{whole} min" if whole < 90 else f"{whole} min ({whole // 60} h {whole % 60:02d})"


_remembered: OrderedDict[_Key, Seen] = OrderedDict()
_hold = Lock()
_reading: dict[int, Lock] = {}
"""One for each machine whose book is read."""


def forget() -> None:
    """Forget how machines stood: where one database follows another."""
    with _hold:
        _remembered.clear()


def _as_they_stand(
    latest: Mapping[int, int], rows: Callable[[list[int]], list[Machine]]
) -> list[Seen]:
    """Machines as remembered from the same entry and day, else looked up.

    latest: for each machine's row the last entry in its diary. rows: gives rows by number.
    Every change is written with an entry in the diary, so the last entry tells whether anything
    changed. It is asked for before the rest: what is remembered is never older than it says.
    """
    from django.db import DEFAULT_DB_ALIAS, connections, transaction
    from django.utils.timezone import localdate

    from shimstock.workshop.file_opened import opened_by
    from shimstock.workshop.now import machines_now

    today, file = localdate(), opened_by(connections[DEFAULT_DB_ALIAS])
    with _hold:
        found = {pk: _remembered.get((file, pk, last, today)) for pk, last in latest.items()}
    if lacking := [pk for pk, seen in found.items() if seen is None]:
        fetched = rows(lacking)
        _read_books(fetched)
        stand = machines_now(fetched, today)
        found |= {row.pk: Seen(row, stand[row.pk], latest[row.pk]) for row in fetched}
    there = [seen for seen in found.values() if seen is not None]
    # Only what is committed: a transaction that is rolled back gives its numbers to another.
    transaction.on_commit(lambda: _remember(there, file, today))
    return there


def _read_books(machines: list[Machine]) -> None:
    """Read each machine's book, which takes long, once, and not beside others who wait for it."""
    from shimstock.workshop.books import book_of

    for each in machines:
        with _reading.setdefault(each.pk, Lock()):
            book_of(each)


def _remember(there: list[Seen], file: File, today: date) -> None:
    with _hold:
        for seen in there:
            key = (file, seen.row.pk, seen.latest, today)
            _remembered[key] = seen
            _remembered.move_to_end(key)
        while len(_remembered) > REMEMBERED:
            _remembered.popitem(last=False)
