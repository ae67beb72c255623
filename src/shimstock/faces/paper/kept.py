"""Everything that is kept of one machine and goes into its record, fetched once."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime

from django.utils import timezone

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import FigureKey, MachineNow
from shimstock.trade.machine.words import Stage
from shimstock.workshop.models import DiaryEntry, Machine, ReadingRow, VerdictRow
from shimstock.workshop.now import machine_now


@dataclass(frozen=True)
class Kept:
    """One machine as it stands, and how it came to be so."""

    machine: Machine
    now: MachineNow
    verdicts: Mapping[FigureKey, VerdictRow]
    readings: Mapping[FigureKey, ReadingRow]
    diary: tuple[DiaryEntry, ...]
    joint_rows: Mapping[str, str]
    """For each joint that was ever touched, its row as the diary names it."""

    @property
    def book(self) -> Book:
        """The book that the machine is made to."""
        return self.now.book


def kept_of(machine: Machine, today: date) -> Kept:
    """Fetch what is kept of a machine."""
    verdicts = machine.verdicts.filter(current=True)
    readings = machine.readings.filter(superseded=False, withdrawn=False)
    return Kept(
        machine=machine,
        now=machine_now(machine, today),
        verdicts={(row.figure, row.piece, Stage(row.stage)): row for row in verdicts},
        readings={(row.figure, row.piece, Stage(row.stage)): row for row in readings},
        diary=tuple(machine.diary.all()),
        joint_rows={row.joint: f"jointstate:{row.pk}" for row in machine.joints.all()},
    )


def day_of(at: datetime) -> date:
    """The day of a moment, by the clock in the shed."""
    return timezone.localdate(at)
