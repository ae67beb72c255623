"""Rechecking: every stored verdict judged again with today's code and book."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

import shimstock
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.judge import Judged
from shimstock.workshop.books import book_of
from shimstock.workshop.find import find_machine
from shimstock.workshop.judging import (
    differing,
    opinions,
    readings_of,
    rejudge,
    verdict_rows,
)
from shimstock.workshop.ledger import writing
from shimstock.workshop.models import DiaryEntry, Machine, VerdictRow
from shimstock.workshop.wording import count_of

Progress = Callable[[int, int], bool | None]
"""Told how many verdicts of how many were looked at; answers False to stop."""


@dataclass(frozen=True)
class Judgement:
    """The gist of one verdict, and the version of the code that gave it."""

    verdict: str
    says: str
    value: float
    unit: str
    p: float | None
    code_version: str


@dataclass(frozen=True)
class Change:
    """A stored verdict that today's code would not give."""

    machine: str
    figure: str
    piece: str
    stage: Stage
    stored: Judgement | None
    today: Judgement | None


@dataclass(frozen=True)
class Recheck:
    """What a recheck found, and the diary's entries where it was applied."""

    looked_at: int
    changes: tuple[Change, ...]
    entries: tuple[DiaryEntry, ...]
    stopped: bool


def recheck(
    *,
    machine: str | Machine | None = None,
    apply: bool = False,
    who: str = "",
    progress: Progress | None = None,
    at: datetime | None = None,
) -> Recheck:
    """Judge every stored verdict again and list those that would change.

    machine: one machine; all if not given. apply: store the new ones beside the old.
    progress: told after each machine; stopping leaves the machines done so far complete.
    Raises Refused where it is to be applied and nobody is named.
    """
    machines = _machines(machine)
    total = VerdictRow.objects.filter(machine__in=machines, current=True).count()
    looked_at, changes, entries = 0, list[Change](), list[DiaryEntry]()
    for each in machines:
        found, count = _changes(each)
        looked_at += count
        changes += found
        if apply and found:
            entries.append(_apply(each, who, at))
        if progress is not None and progress(looked_at, total) is False:
            return Recheck(looked_at, tuple(changes), tuple(entries), stopped=True)
    return Recheck(looked_at, tuple(changes), tuple(entries), stopped=False)


def _machines(machine: str | Machine | None) -> list[Machine]:
    if machine is not None:
        return [find_machine(machine)]
    return list(Machine.objects.filter(withdrawn=False))


def _changes(machine: Machine) -> tuple[list[Change], int]:
    rows = verdict_rows(machine)
    found = opinions(book_of(machine), readings_of(machine))
    changes = [
        Change(machine.slug, *key, stored=_stored(rows.get(key)), today=_today(found.get(key)))
        for key in differing(rows, found)
    ]
    return changes, len(rows)


def _apply(machine: Machine, who: str, at: datetime | None) -> DiaryEntry:
    with writing("recheck", who=who, machine=machine, at=at) as pen:
        changed = rejudge(pen, pen.book)
        pen.says = f"Rechecked: {count_of(len(changed), 'verdict')} changed."
    return pen.entry


def _stored(row: VerdictRow | None) -> Judgement | None:
    if row is None:
        return None
    return Judgement(row.verdict, row.says, row.value, row.unit, row.p, row.code_version)


def _today(judged: Judged | None) -> Judgement | None:
    if judged is None:
        return None
    gist = (judged.verdict or "", judged.says, judged.value, judged.unit, judged.p_within)
    return Judgement(*gist, shimstock.__version__)
