"""A machine as it stands: what every page, command and paper looks up before it shows anything."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from threading import Lock
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.measure.remedy import Remedy
    from shimstock.trade.measure.verdicts import Verdicts
    from shimstock.trade.reach.gates import GateView
    from shimstock.workshop.models import DiaryEntry, Machine

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

        return standing(self.now)

    @cached_property
    def measured(self) -> tuple[Verdicts, list[Remedy]]:
        """Everything that was read on it as it is judged today, and what to do about it."""
        return measured(self)


def see(machine: str) -> Seen:
    """Look at a machine. Raises NotFound."""
    from shimstock.workshop.find import find_machine

    return see_row(find_machine(machine))


def see_row(row: Machine) -> Seen:
    """Look at a machine whose row is at hand."""
    latest = row.diary.order_by("-pk").values_list("pk", flat=True).first() or 0
    return _as_it_stands(row, latest)


def see_all() -> list[Seen]:
    """Look at every machine in the shed, in one SELECT for all that did not change."""
    from django.db.models import Max

    from shimstock.workshop.models import Machine

    rows = Machine.objects.filter(withdrawn=False).defer("book_text", "starters")
    return [_as_it_stands(row, row.latest or 0) for row in rows.annotate(latest=Max("diary__pk"))]


def measured(seen: Seen) -> tuple[Verdicts, list[Remedy]]:
    """Everything that was read on a machine as it is judged today, and what to do about it."""
    from shimstock.trade.machine.words import Stage
    from shimstock.trade.measure.remedies import remedies
    from shimstock.trade.measure.verdicts import verdicts
    from shimstock.workshop.judging import readings_of, trade_reading

    readings = {
        (row.figure, row.piece, Stage(row.stage)): trade_reading(seen.book, row)
        for row in readings_of(seen.row)
    }
    judged = verdicts(seen.book, readings)
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


_Key = tuple[int, int, date]
_remembered: OrderedDict[_Key, Seen] = OrderedDict()
_hold = Lock()


def forget() -> None:
    """Forget how machines stood: for tests, in which one database follows another."""
    with _hold:
        _remembered.clear()


def _as_it_stands(row: Machine, latest: int) -> Seen:
    """The machine as remembered from the same entry and day, else looked up.

    Every change is written with an entry in the diary, so the last entry tells whether anything
    changed. It is asked for before the rest: what is remembered is never older than it says.
    """
    from django.utils.timezone import localdate

    from shimstock.workshop.now import machine_now

    key = (row.pk, latest, localdate())
    with _hold:
        if (seen := _remembered.get(key)) is not None:
            _remembered.move_to_end(key)
            return seen
    seen = Seen(row, machine_now(row), latest)
    with _hold:
        _remembered[key] = seen
        while len(_remembered) > REMEMBERED:
            _remembered.popitem(last=False)
    return seen
