"""One machine's record as plain words and numbers, without any layout."""

from dataclasses import dataclass
from datetime import date

from shimstock.faces.paper import story
from shimstock.faces.paper.bores import bores
from shimstock.faces.paper.figures import (
    OUT_OF_SETTING,
    FigureGroup,
    Shown,
    counts,
    figure_groups,
    workings,
)
from shimstock.faces.paper.joints import JointsTold, joints_told
from shimstock.faces.paper.kept import Kept, day_of, kept_of
from shimstock.faces.paper.left import Left, left
from shimstock.faces.paper.parts import PartsTold, parts_told
from shimstock.faces.paper.signs import VERDICT_SIGNS
from shimstock.faces.paper.wear_chart import Bore
from shimstock.faces.paper.wording import Under, day
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import TOO_MUCH, Verdict
from shimstock.workshop.models import Machine


@dataclass(frozen=True)
class Count:
    """How many there are of one kind."""

    sign: str
    word: str
    count: int


@dataclass(frozen=True)
class Record:
    """Everything that the paper says."""

    name: str
    short_name: str
    book: str
    book_note: str
    stand_ins: int
    all_figures: int
    serials: tuple[tuple[str, str], ...]
    notes: str
    printed: str
    booked_in: str
    first_day: str
    last_day: str
    workers: tuple[str, ...]
    summary: str
    against: tuple[Under, ...]
    verdicts: tuple[Count, ...]
    figures: tuple[FigureGroup, ...]
    workings: tuple[Shown, ...]
    joints: JointsTold
    parts: PartsTold
    left: Left
    diary: story.DiaryTold


@dataclass(frozen=True)
class Gathered:
    """The record's words, and what its pictures are drawn from."""

    record: Record
    now: MachineNow
    bores: tuple[Bore, ...]


def gather(machine: Machine, today: date) -> Gathered:
    """Everything for the record of one machine, as it stands."""
    kept = kept_of(machine, today)
    return Gathered(_record(kept, today), kept.now, bores(kept))


def _record(kept: Kept, today: date) -> Record:
    machine, book = kept.machine, kept.book
    joints, parts, groups = joints_told(kept), parts_told(kept), figure_groups(kept)
    remains = left(kept)
    first, last = story.worked_from(kept)
    return Record(
        name=machine.name,
        short_name=machine.slug,
        book=book.title,
        book_note=book.note or "",
        stand_ins=sum(figure.stand_in for figure in book.measures.values()),
        all_figures=len(book.measures),
        serials=tuple((str(where), str(what)) for where, what in machine.serials.items()),
        notes=machine.notes,
        printed=day(today),
        booked_in=day(day_of(machine.added_at)),
        first_day=first,
        last_day=last,
        workers=story.workers(kept),
        summary=story.summary(kept, groups, joints, parts),
        against=story.against(kept, groups, joints, parts),
        verdicts=_verdicts(groups, remains.not_measured_count),
        figures=groups,
        workings=workings(kept),
        joints=joints,
        parts=parts,
        left=remains,
        diary=story.diary_told(kept),
    )


def _verdicts(groups: tuple[FigureGroup, ...], not_measured: int) -> tuple[Count, ...]:
    found = {**counts(groups), Verdict.NOT_MEASURED.value: not_measured}
    signs = {word.value: sign for word, sign in VERDICT_SIGNS.items()}
    signs[OUT_OF_SETTING] = VERDICT_SIGNS[Verdict.WORN_OUT]
    signs[TOO_MUCH] = VERDICT_SIGNS[Verdict.BORDERLINE]
    return tuple(Count(signs[word], word, count) for word, count in found.items())
