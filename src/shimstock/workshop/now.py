from datetime import date

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
from shimstock.workshop.models import JointState, Machine, PieceState, VerdictRow


def machine_now(machine: Machine, today: date | None = None) -> MachineNow:
    """A machine as it stands, in five SELECTs however large it is.

    What is written down of something that its book does not know is left out, and stays kept.
    """
    book = book_of(machine)
    passed = machine.gates_passed.filter(withdrawn=False).values_list("gate", flat=True)
    return MachineNow(
        book=book,
        today=today or timezone.localdate(),
        joints={r.joint: joint_now(r) for r in machine.joints.all() if r.joint in book.joints},
        pieces=_pieces(machine, book),
        verdicts=_verdicts(machine, book),
        answers=_answers(machine),
        passed=frozenset(passed) & book.gates.keys(),
    )


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


def _pieces(machine: Machine, book: Book) -> dict[PieceKey, PieceNow]:
    return {
        (row.part, row.piece): piece_now(row)
        for row in machine.pieces.all()
        if knows_piece(book, row.part, row.piece)
    }


def _verdicts(machine: Machine, book: Book) -> dict[FigureKey, VerdictNow]:
    rows = machine.verdicts.filter(current=True).exclude(verdict="").defer("data")
    return {
        (row.figure, row.piece, Stage(row.stage)): verdict_now(row)
        for row in rows
        if row.figure in book.measures
        if row.piece == TOGETHER or knows_figure(book, row.figure, row.piece)
    }


def _answers(machine: Machine) -> dict[str, Answer]:
    return {
        row.point: Answer(row.answer, row.by, timezone.localdate(row.at), row.reason)
        for row in machine.answers.filter(withdrawn=False)
    }
