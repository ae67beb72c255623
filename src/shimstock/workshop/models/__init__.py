"""The tables: what is remembered of each machine, and the diary of how it came to be so."""

from shimstock.workshop.models.answers import AnswerRow, GatePass
from shimstock.workshop.models.diary import DiaryEntry
from shimstock.workshop.models.faults import FaultCounts, FaultFound, FaultSaid, FaultSearch
from shimstock.workshop.models.kept import Kept
from shimstock.workshop.models.machine import Machine
from shimstock.workshop.models.notes import Bag, Note
from shimstock.workshop.models.people import Device, JoinCode, Person, SignInTry
from shimstock.workshop.models.photos import Photo, Upload
from shimstock.workshop.models.readings import ReadingRow, VerdictRow
from shimstock.workshop.models.states import JointState, PieceState
from shimstock.workshop.models.workshop import Workshop

__all__ = [
    "AnswerRow",
    "Bag",
    "Device",
    "DiaryEntry",
    "FaultCounts",
    "FaultFound",
    "FaultSaid",
    "FaultSearch",
    "GatePass",
    "JoinCode",
    "JointState",
    "Kept",
    "Machine",
    "Note",
    "Person",
    "Photo",
    "PieceState",
    "ReadingRow",
    "SignInTry",
    "Upload",
    "VerdictRow",
    "Workshop",
]
