"""Joints checked for leaks."""

from datetime import datetime

from shimstock.trade.machine.words import JointWord
from shimstock.workshop.acts.joint_rows import joint_row, move
from shimstock.workshop.find import find_joint
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, JointState, Machine
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.wording import joint_named

RESULTS = {
    "dry": JointWord.LEAK_CHECKED,
    "weeping": JointWord.WEEPING,
    "leaking": JointWord.LEAKING,
}
"""What a leak check may find, and the joint's word for it."""


def leak_check(
    *,
    machine: str | Machine,
    joint: str,
    result: str,
    who: str,
    chalk: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Check a joint for leaks: dry, weeping or leaking.

    chalk: an undisturbed joint, dusted with chalk and found dry; it stays undisturbed.
    Raises Refused where the joint stands open, NotFound for an unknown joint or result.
    """
    with writing("leak check", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        row = joint_row(pen, key)
        word = _result(result)
        if chalk and word == JointWord.LEAK_CHECKED:
            _chalked_dry(pen, row)
        else:
            move(pen, row, word)
            row.leak_checked_on = pen.today if word == JointWord.LEAK_CHECKED else None
        pen.save(row)
        how = "dusted with chalk and " if chalk else ""
        pen.says = f"{joint_named(pen.book, key)} {how}found {result.strip().lower()}."
    return pen.entry


def _chalked_dry(pen: Pen, row: JointState) -> None:
    if row.word != JointWord.UNDISTURBED:
        name = joint_named(pen.book, row.joint)
        raise Refused([f"{name} is {row.word}: chalk proves only a joint that is undisturbed."])
    row.dry_chalked_on = pen.today


def _result(typed: str) -> JointWord:
    if (word := RESULTS.get(typed.strip().lower())) is None:
        raise NotFound("result of a leak check", typed, RESULTS)
    return word
