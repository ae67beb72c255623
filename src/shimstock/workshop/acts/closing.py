"""Joints made ready and closed."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from shimstock.trade.machine.words import JointWord
from shimstock.trade.reach.came_off import refuse_more_than_came_off
from shimstock.workshop import rests, rules
from shimstock.workshop.acts.joint_rows import become, counted, joint_row, move, open_row, uncover
from shimstock.workshop.find import find_joint
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.miscounted import opening_to_undo, with_way_back
from shimstock.workshop.models import DiaryEntry, JointState, Machine
from shimstock.workshop.now import joint_now
from shimstock.workshop.refused import NotFound, Refused, refuse
from shimstock.workshop.wording import count_of, joint_named, listed

CLOSED = (JointWord.UNDISTURBED, JointWord.SEALED, JointWord.TORQUED, JointWord.LEAK_CHECKED)
"""Joints that are shut, and need nothing of what closing takes."""


@dataclass(frozen=True)
class _Ready:
    """What lies ready for closing; nothing is said of what is None or empty."""

    faces_clean: bool | None
    gaskets: Sequence[str]
    bolts: int | None


def ready_joint(
    *,
    machine: str | Machine,
    joint: str,
    who: str,
    faces_clean: bool | None = None,
    gaskets: Sequence[str] = (),
    bolts: int | None = None,
    meant: bool = False,
    at: datetime | None = None,
) -> DiaryEntry:
    """Make an open joint ready to close: faces clean, gaskets and seals there, bolts counted.

    gaskets: what lies ready, as the book calls it; added to what is ready already.
    bolts: how many are in the bag. meant: they are right although fewer came off.
    What is not given stays as it is, but a cover comes off.
    Raises Refused where the joint is not open, NotFound for an unknown joint or gasket,
    HardlyMeant for more bolts than came off.
    """
    with writing("ready", who=who, machine=machine, at=at) as pen:
        key = find_joint(pen.book, joint)
        row = open_row(pen, key)
        if not meant:
            refuse_more_than_came_off(row.bolts_out, bolts)
        _lay_ready(pen, row, _Ready(faces_clean, gaskets, bolts))
        bare = uncover(pen, row)
        if row.faces_clean:
            move(pen, row, JointWord.GASKET_READY if row.gaskets_ready else JointWord.FACES_CLEAN)
        elif row.word == JointWord.PARKED_OPEN:
            move(pen, row, JointWord.OPEN)
        pen.save(row)
        pen.says = f"Made ready {joint_named(pen.book, key)}: {_what_is_ready(row)}{bare}."
    return pen.entry


def close_joint(
    *,
    machine: str | Machine,
    joint: str,
    who: str,
    faces_clean: bool | None = None,
    gaskets: Sequence[str] = (),
    bolts: int | None = None,
    torqued: bool = False,
    dry: bool = False,
    reason: str = "",
    at: datetime | None = None,
) -> DiaryEntry:
    """Close a joint for good, or only try it dry; one that is shut may be torqued afterwards.

    torqued: tightened to the book's figure. dry: tried, to come apart again.
    reason: why it is closed although something is missing; it replaces nothing that is hard.
    The others as for making it ready.
    Raises Refused with every reason while anything is missing, NotFound for an unknown joint.
    """
    with writing("close", who=who, machine=machine, at=at) as pen:
        row = joint_row(pen, find_joint(pen.book, joint))
        although = ""
        if joint_now(row).is_open or not torqued:
            _lay_ready(pen, row, _Ready(faces_clean, gaskets, bolts))
            although = _seal(pen, row, dry, reason.strip())
        if torqued and not dry:
            move(pen, row, JointWord.TORQUED)
        pen.save(row)
        pen.says = f"{joint_named(pen.book, row.joint)}: {row.word}{although}."
    return pen.entry


def _lay_ready(pen: Pen, row: JointState, ready: _Ready) -> None:
    if ready.faces_clean is not None:
        row.faces_clean = ready.faces_clean
    if ready.bolts is not None:
        row.bolts_ready = counted(ready.bolts)
    uses = [use.name for use in pen.book.joints[row.joint].uses]
    named = [_use_named(uses, typed) for typed in ready.gaskets]
    row.gaskets_ready = list(dict.fromkeys([*row.gaskets_ready, *named]))


def _use_named(uses: list[str], typed: str) -> str:
    wanted = typed.strip().lower().replace("-", " ")
    for name in uses:
        if name.lower().replace("-", " ") == wanted:
            return name
    raise NotFound("gasket or seal", typed, uses, where=" for this joint")


def _seal(pen: Pen, row: JointState, dry: bool, reason: str) -> str:
    """Close the joint; a cover taken off, and what the reason set aside, is told for the diary."""
    _not_closed_already(pen, row)
    open_row(pen, row.joint)
    if dry:
        move(pen, row, JointWord.DRY_FITTED)
        return uncover(pen, row)
    ready = rules.with_joint(pen.now, row.joint, joint_now(row))
    entry = opening_to_undo(pen.machine, ready, row.joint)
    against = with_way_back(ready, row.joint, rules.why_not_close(ready, row.joint), entry)
    if not reason or any(each.hard for each in against):
        refuse(against)
    pen.rests_on |= rests.closing(ready, row.joint)
    become(pen, row, JointWord.SEALED)
    row.sealed_on = pen.today
    row.covered, row.uncovered_on = False, None
    aside = (f"{each.what} {each.why}" for each in against)
    return f", although {listed(aside)}, because {reason}" if against else ""


def _not_closed_already(pen: Pen, row: JointState) -> None:
    """Refuse to close what is closed: another may have been quicker, and nothing is to be done."""
    if row.word in CLOSED:
        name = joint_named(pen.book, row.joint)
        raise Refused([f"{name} is {row.word} already: there is nothing to close."])


def _what_is_ready(row: JointState) -> str:
    ready = ["faces clean"] if row.faces_clean else []
    ready += [str(name) for name in row.gaskets_ready]
    if row.bolts_ready is not None:
        apart = row.bolts_out and row.bolts_ready != row.bolts_out
        where = f" where {row.bolts_out} came off" if apart else ""
        ready.append(f"{count_of(row.bolts_ready, 'bolt')} counted{where}")
    return listed(ready) if ready else "nothing yet"
