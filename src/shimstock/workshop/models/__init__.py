"""The tables: what is remembered of each machine, and the diary of how it came to be so."""

from shimstock.workshop.models.answers import AnswerRow, GatePass
from shimstock.workshop.models.diary import DiaryEntry
from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.models.readings import ReadingRow, VerdictRow
from shimstock.workshop.models.states import JointState, PieceState

__all__ = [
    "AnswerRow",
    "DiaryEntry",
    "GatePass",
    "JointState",
    "Kept",
    "Machine",
    "PieceState",
    "ReadingRow",
    "VerdictRow",
]
