"""Joints opened and covered."""

from datetime import datetime

from shimstock.trade.machine.words import JointWord
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.reach.came_off import refuse_unlikely
from shimstock.workshop import rests, rules
from shimstock.workshop.acts.joint_rows import become, counted, joint_row, move, open_row
from shimstock.workshop.find import find_joint
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, Machine
from shimstock.workshop.refused import refuse
from shimstock.workshop.wording import joint_named, listed

UNITS = {"inch": "in", "metric": "mm"}
"""What a bare number of a book's thickness is in."""


def open_joint(
    *,
    machine: str | Machine,
    joint: str,
    who: str,
    path: bool = False,
    bolts_out: int | None = None,
    thickness_found: str | None = None,
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Open a joint; with `path`, and before it all that must be open first.

    bolts_out: how many came out; the book's count if not given.
    thickness_found: of the old gasket, as measured, with its unit.
    meant: keep more bolts than the book has, and a gasket far off the book's.
    Raises Refused where something must be open first, NotFound for an unknown joint,
    NotUnderstood for a thickness that cannot be read, HardlyMeant for what is to be said as meant.
    """
    with writing("open", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        _hold_against_book(pen, key, counted(bolts_out), thickness_found, meant)
        on_the_way = rules.joints_on_the_way(pen.now, key) if path else (key,)
        for each in on_the_way:
            _open_one(pen, each)
        row = joint_row(pen, key)
        row.bolts_out = row.bolts_out if bolts_out is None else bolts_out
        row.thickness_found = thickness_found
        pen.save(row)
        pen.says = f"Opened {listed(joint_named(pen.book, each) for each in on_the_way)}."
        pen.says += _passed_no_more(pen)
    return pen.entry


def cover_joint(
    *, machine: str | Machine, joint: str, who: str, at: datetime | None = None
) -> DiaryEntry:
    """Cover an open joint against rust, dust and mice.

    Raises Refused where it is not open, NotFound for an unknown joint.
    """
    with writing("cover", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        row = open_row(pen, key)
        row.covered, row.uncovered_on = True, None
        if row.word == JointWord.OPEN:
            move(pen, row, JointWord.PARKED_OPEN)
        pen.save(row)
        pen.says = f"Covered {joint_named(pen.book, key)}."
    return pen.entry


def _hold_against_book(
    pen: Pen, joint: str, bolts: int | None, thickness: str | None, meant: bool
) -> None:
    """Refuse a thickness that cannot be read; ask about what the joint can hardly have had."""
    unit, what = UNITS[pen.book.prints], "thickness of the gasket"
    found = None if thickness is None else parse(thickness, unit=unit, what=what)
    if not meant:
        refuse_unlikely(pen.book.joints[joint], bolts=bolts, thickness=found)


def _passed_no_more(pen: Pen) -> str:
    """What is opened again must be passed again: said in the diary, with the gates."""
    passes = pen.machine.gates_passed.filter(withdrawn=False)
    for row in passes:
        row.withdrawn = True
        pen.save(row)
    names = [pen.book.gates[row.gate].name for row in passes if row.gate in pen.book.gates]
    return f" To be passed again: {listed(names)}." if names else ""


def _open_one(pen: Pen, joint: str) -> None:
    row = joint_row(pen, joint)
    refuse(rules.why_not_open(pen.now, joint))
    pen.rests_on |= rests.opening(pen.now, joint)
    become(pen, row, JointWord.OPEN)
    row.covered = row.faces_clean = False
    row.gaskets_ready = []
    row.bolts_out = pen.book.joints[joint].bolts
    row.bolts_ready = row.thickness_found = None
    row.sealed_on = row.leak_checked_on = row.dry_chalked_on = None
    pen.save(row)
