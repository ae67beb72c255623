"""One transaction, one entry in the diary, and in it every row as it was and as it is now."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, datetime
from functools import cached_property
from typing import TYPE_CHECKING

from django.db import transaction
from django.utils import timezone

from shimstock.workshop.find import find_machine
from shimstock.workshop.models import DiaryEntry, Kept, Machine
from shimstock.workshop.refused import Refused
from shimstock.workshop.rows import Fields, row_name, stored, written
from shimstock.workshop.sending import ChangedMeanwhile, Sending, changed_since, sending_now

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.machine.state import MachineNow


class Pen:
    """Saves rows for one act and notes what each of them was before."""

    entry: DiaryEntry
    """What was written into the diary; there once the act is over."""

    def __init__(self, who: str, machine: Machine | None, at: datetime) -> None:
        self.who = who
        self.at = at
        self.says = ""
        self.touched: dict[str, str] = {}
        self.rests_on: set[str] = set()
        self.before: dict[str, Fields] = {}
        self.after: dict[str, Fields] = {}
        self._machine = machine

    @property
    def machine(self) -> Machine:
        """The machine that the act is about."""
        if self._machine is None:
            raise ValueError("this act is about no one machine")
        return self._machine

    @machine.setter
    def machine(self, machine: Machine) -> None:
        self._machine = machine

    @property
    def today(self) -> date:
        """The day of the act, by the clock in the shed."""
        return timezone.localdate(self.at)

    @cached_property
    def book(self) -> Book:
        """The book of the act's machine."""
        from shimstock.workshop.books import book_of

        return book_of(self.machine)

    @cached_property
    def now(self) -> MachineNow:
        """The machine as it stands, what this act has saved included."""
        from shimstock.workshop.now import machine_now

        return machine_now(self.machine, self.today)

    def save(self, row: Kept) -> None:
        """Save a row, new or changed, and note for the diary what it was and is."""
        was = stored(row)
        row.save()
        self.__dict__.pop("now", None)
        now = written(row)
        changed = [column for column, value in now.items() if was.get(column, self) != value]
        if not changed:
            return
        name = row_name(row)
        self.touched[name] = row.place
        before, after = self.before.setdefault(name, {}), self.after.setdefault(name, {})
        for column in changed:
            if column in was:
                before.setdefault(column, was[column])
            after[column] = now[column]


@contextmanager
def writing(
    act: str,
    *,
    who: str,
    machine: str | Machine | None = None,
    at: datetime | None = None,
    client_key: str | None = None,
    undoes: DiaryEntry | None = None,
) -> Iterator[Pen]:
    """Do one act: all of it or, where an error is raised, nothing of it.

    act: its name. who: the person. at: when it was done; now if not given.
    client_key: what a sender that may send twice calls this sending; else that of the form that
    is being acted on.
    Raises NotFound for an unknown machine, Refused where nobody is named, ChangedMeanwhile where
    the form's page was made before others changed what this act changes.
    """
    if not who.strip():
        raise Refused(["Nobody is named: say who does this."])
    sending = sending_now() if client_key is None else None
    with transaction.atomic():
        found = None if machine is None else find_machine(machine, lock=True)
        pen = Pen(who.strip(), found, at or timezone.now())
        yield pen
        if sending is not None:
            _check_unchanged(pen, sending)
        pen.entry = DiaryEntry(
            machine=pen._machine,
            act=act,
            who=pen.who,
            at=pen.at,
            says=pen.says,
            before=pen.before,
            after=pen.after,
            touched=list(pen.touched),
            places=sorted(set(pen.touched.values())),
            rests_on=sorted(pen.rests_on),
            undoes=undoes,
            client_key=sending.key or None if sending else client_key,
            sent={name: list(each) for name, each in sending.content.items()} if sending else None,
        )
        pen.entry.save()


def _check_unchanged(pen: Pen, sending: Sending) -> None:
    """Refuse to write over what the sender cannot have seen; the write lock is held already."""
    if sending.seen is None or pen._machine is None or pen._machine.pk is None:
        return
    places = set(pen.touched.values())
    if entries := changed_since(pen._machine.pk, sending.seen, places):
        raise ChangedMeanwhile(entries)


def sent_before(client_key: str | None) -> DiaryEntry | None:
    """The entry that an earlier sending under the same key made, if there is one."""
    if not client_key:
        return None
    found: DiaryEntry | None = DiaryEntry.objects.filter(client_key=client_key).first()
    return found
