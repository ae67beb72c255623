"""What commands look up before they show anything: a machine as it stands, and names of things."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Caution, Shown

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.book import Caution as BookCaution
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.measure.remedy import Remedy
    from shimstock.trade.measure.verdicts import Verdicts
    from shimstock.workshop.models import DiaryEntry, Machine

DEFERS = "The maker's book, the local codes and licensed practice go before everything said here."


@dataclass(frozen=True)
class Seen:
    """A machine's row and how it stands now."""

    row: Machine
    now: MachineNow

    @property
    def book(self) -> Book:
        """The book it is made to."""
        return self.now.book


def see(machine: str) -> Seen:
    """Look at a machine. Raises NotFound."""
    from shimstock.workshop.find import find_machine
    from shimstock.workshop.now import machine_now

    row = find_machine(machine)
    return Seen(row, machine_now(row))


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


def kept_line(entry: DiaryEntry) -> str:
    """A diary entry in a line, with its number for undoing."""
    return f"{entry.says}  [entry {entry.pk}]"


@contextmanager
def kept_so_far(entries: list[DiaryEntry]) -> Iterator[None]:
    """Where a later act of several is refused, say with it what the earlier ones have kept."""
    try:
        yield
    except Exception as error:
        for entry in entries:
            error.add_note(kept_line(entry))
        raise


def cautions_shown(cautions: Iterable[BookCaution]) -> list[Shown]:
    """Cautions whole."""
    return [Caution(each.name, _caution_lines(each)) for each in cautions]


def cautions_data(cautions: Iterable[BookCaution]) -> list[dict[str, Any]]:
    """Cautions as plain values."""
    return [
        {"name": c.name, "mark": c.mark, "do": c.do, "never": c.never, "defer": c.defer}
        for c in cautions
    ]


def called(things: Mapping[str, Any], key: str) -> str:
    """A thing of the book in words: its name and mark."""
    thing = things[key]
    return f"{thing.name} ({thing.mark})" if thing.mark else str(thing.name)


def minutes(number: float) -> str:
    """Minutes, and hours beside them where there are many: 165 min (2 h 45)."""
    whole = round(number)
    return f"{whole} min" if whole < 90 else f"{whole} min ({whole // 60} h {whole % 60:02d})"


def _caution_lines(caution: BookCaution) -> list[str]:
    defer = [f"Ask: {caution.defer}"] if caution.defer else []
    return [caution.do, caution.never, *defer]
