"""Joints checked for leaks."""

from datetime import datetime

from shimstock.trade.machine.words import JointWord, stands
from shimstock.trade.reach.dry import CLOSED_HERE, WET, refuse_not_run
from shimstock.workshop import rules
from shimstock.workshop.acts.joint_rows import joint_row, move
from shimstock.workshop.find import find_joint
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, JointState, Machine
from shimstock.workshop.refused import NotFound, Refused, refuse
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
    standing: bool = False,
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Check a joint for leaks: dry, weeping or leaking.

    chalk: an undisturbed joint, dusted with chalk and found dry; it stays undisturbed.
    standing: seen full or under pressure, the engine not run; dry so is chalk-dry, no more.
    meant: keep it though the engine cannot have run since the joint was closed.
    Raises Refused where the joint stands open, NotFound for an unknown joint or result, HardlyMeant
    for dry by a run that cannot have been.
    """
    with writing("leak check", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        row = joint_row(pen, key)
        word = _result(result)
        if word == JointWord.LEAK_CHECKED:
            _check_not_wet(pen, row)
        if word != JointWord.LEAK_CHECKED:
            move(pen, row, word)
            row.leak_checked_on = row.dry_chalked_on = None
        elif chalk or standing:
            _chalked_dry(pen, row, standing)
        else:
            move(pen, row, word)
            if not meant:
                refuse_not_run(pen.now, key)
            row.leak_checked_on = pen.today
        pen.save(row)
        how = "dusted with chalk and " if chalk else ""
        how += "standing, engine not run, " if standing else ""
        pen.says = f"{joint_named(pen.book, key)} {how}found {result.strip().lower()}."
    return pen.entry


def _check_not_wet(pen: Pen, row: JointState) -> None:
    """Raises Refused where a joint was found wet and nothing was done about it since."""
    if (word := JointWord(row.word)) in WET:
        raise Refused(
            [f"{joint_named(pen.book, row.joint)} {stands(word)}, and nothing was done about it "
             "since; tighten it again and write down the torque, or open it and seal it anew"]
        )  # fmt: skip


def _chalked_dry(pen: Pen, row: JointState, standing: bool) -> None:
    """Keep a joint's word and the day. Raises Refused where that proves nothing."""
    if row.word != JointWord.UNDISTURBED:
        name = joint_named(pen.book, row.joint)
        if not standing:
            raise Refused(
                [f"{name} is {row.word}: chalk proves only a joint that is undisturbed; one that "
                 "was closed here can be seen standing full."]
            )  # fmt: skip
        if row.word not in CLOSED_HERE:
            stood = stands(JointWord(row.word))
            raise Refused([f"{name} {stood}: standing full proves nothing; close it first"])
        refuse(rules.why_not_move_joint(pen.now, row.joint, JointWord.LEAK_CHECKED))
    row.dry_chalked_on = pen.today


def _result(typed: str) -> JointWord:
    if (word := RESULTS.get(typed.strip().lower())) is None:
        raise NotFound("result of a leak check", typed, RESULTS)
    return word
