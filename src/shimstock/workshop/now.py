from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, datetime
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from django.db.models import CharField, Value
from django.utils import timezone

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import (
    Answer,
    FigureKey,
    JointNow,
    MachineNow,
    PieceKey,
    PieceNow,
    VerdictNow,
)
from shimstock.trade.machine.words import JointWord, PartWord, Stage, Verdict
from shimstock.trade.measure.pair import TOGETHER
from shimstock.workshop.books import book_of, knows_figure, knows_piece
from shimstock.workshop.models import (
    AnswerRow,
    GatePass,
    JointState,
    Machine,
    PieceState,
    VerdictRow,
)
from shimstock.workshop.searches_now import rows_of_searches, searches_now

if TYPE_CHECKING:
    from django.db.models import QuerySet

OfMachine = TypeVar("OfMachine", JointState, PieceState, VerdictRow)


def machine_now(machine: Machine, today: date | None = None) -> MachineNow:
    """A machine as it stands, in five SELECTs however large it is.

    What is written down of something that its book does not know is left out, and stays kept.
    """
    return machines_now([machine], today)[machine.pk]


def machines_now(machines: Sequence[Machine], today: date | None = None) -> dict[int, MachineNow]:
    """Machines as they stand, by their rows' numbers, in five SELECTs however many they are."""
    verdicts = VerdictRow.objects.filter(current=True).exclude(verdict="").defer("data")
    joints = _by_machine(JointState.objects.all(), machines)
    pieces = _by_machine(PieceState.objects.all(), machines)
    judged = _by_machine(verdicts, machines)
    signed = _signed(machines)
    searched = rows_of_searches(machines)
    found = {}
    for each in machines:
        book = book_of(each)
        found[each.pk] = MachineNow(
            book=book,
            today=today or timezone.localdate(),
            joints={r.joint: joint_now(r) for r in joints[each.pk] if r.joint in book.joints},
            pieces=_pieces(pieces[each.pk], book),
            verdicts=_verdicts(judged[each.pk], book),
            answers=_answers(signed[each.pk]),
            passed=frozenset(r.about for r in signed[each.pk] if r.gate) & book.gates.keys(),
            searches=searches_now(searched[each.pk], book),
        )
    return found


def joint_now(row: JointState) -> JointNow:
    """One joint's state as a plain value."""
    return JointNow(
        word=JointWord(row.word),
        since=row.since,
        covered=row.covered,
        uncovered_on=row.uncovered_on,
        bolts_out=row.bolts_out,
        bolts_ready=row.bolts_ready,
        faces_clean=row.faces_clean,
        gaskets_ready=tuple(row.gaskets_ready),
        thickness_found=row.thickness_found,
        sealed_on=row.sealed_on,
        leak_checked_on=row.leak_checked_on,
        dry_chalked_on=row.dry_chalked_on,
    )


def piece_now(row: PieceState) -> PieceNow:
    """One piece's state as a plain value."""
    return PieceNow(PartWord(row.word), row.maker, row.size, row.proved_pair, row.note)


def verdict_now(row: VerdictRow) -> VerdictNow:
    """One stored verdict as a plain value."""
    return VerdictNow(Verdict(row.verdict), row.says, row.accepted_reason)


def _by_machine(
    rows: QuerySet[OfMachine], machines: Sequence[Machine]
) -> dict[int, list[OfMachine]]:
    """Rows of several machines, fetched at once and sorted by machine."""
    found: dict[int, list[OfMachine]] = {machine.pk: [] for machine in machines}
    for row in rows.filter(machine__in=[machine.pk for machine in machines]):
        found[row.machine_id].append(row)
    return found


def _pieces(rows: Iterable[PieceState], book: Book) -> dict[PieceKey, PieceNow]:
    return {
        (row.part, row.piece): piece_now(row)
        for row in rows
        if knows_piece(book, row.part, row.piece)
    }


def _verdicts(rows: Iterable[VerdictRow], book: Book) -> dict[FigureKey, VerdictNow]:
    return {
        (row.figure, row.piece, Stage(row.stage)): verdict_now(row)
        for row in rows
        if row.figure in book.measures
        if row.piece == TOGETHER or knows_figure(book, row.figure, row.piece)
    }


class _Signed(NamedTuple):
    """What somebody put their name to: a gate that was passed, or the answer to a gate's point."""

    machine: int
    gate: bool
    about: str
    answer: str
    reason: str
    by: str
    at: datetime


def _signed(machines: Sequence[Machine]) -> dict[int, list[_Signed]]:
    """Answers and passed gates of several machines, in one SELECT."""
    found: dict[int, list[_Signed]] = {machine.pk: [] for machine in machines}
    answers = AnswerRow.objects.filter(withdrawn=False, machine__in=list(found)).order_by()
    passed = GatePass.objects.filter(withdrawn=False, machine__in=list(found)).order_by()
    answered = answers.annotate(gate=Value(False)).values_list(
        "machine_id", "gate", "point", "answer", "reason", "by", "at"
    )
    nothing = Value("", CharField())
    gates = passed.annotate(is_gate=Value(True), answer=nothing, reason=nothing).values_list(
        "machine_id", "is_gate", "gate", "answer", "reason", "by", "at"
    )
    for row in answered.union(gates, all=True):
        signed = _Signed(*row)
        found[signed.machine].append(signed)
    return found


def _answers(rows: Iterable[_Signed]) -> dict[str, Answer]:
    return {
        row.about: Answer(row.answer, row.by, timezone.localdate(row.at), row.reason)
        for row in rows
        if not row.gate
    }
