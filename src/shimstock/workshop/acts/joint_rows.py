"""A joint's row for an act to change, and its move from one state to another."""

from shimstock.trade.machine.words import OPEN_WORDS, JointWord
from shimstock.workshop import rules
from shimstock.workshop.ledger import Pen
from shimstock.workshop.models import JointState
from shimstock.workshop.now import joint_now
from shimstock.workshop.refused import Refused, refuse
from shimstock.workshop.wording import joint_named


def joint_row(pen: Pen, joint: str) -> JointState:
    """The joint's row; a new one where nobody has touched it."""
    row: JointState | None = pen.machine.joints.filter(joint=joint).first()
    return row or JointState(machine=pen.machine, joint=joint)


def open_row(pen: Pen, joint: str) -> JointState:
    """The joint's row. Raises Refused where it does not stand open."""
    row = joint_row(pen, joint)
    if not joint_now(row).is_open:
        raise Refused([f"{joint_named(pen.book, joint)} is {row.word}, not open: open it first."])
    return row


def counted(bolts: int | None) -> int | None:
    """A count of fastenings as it was given. Raises Refused where there cannot be so few."""
    if bolts is not None and bolts < 0:
        raise Refused([f"{bolts} fastenings cannot be: count them again."])
    return bolts


def move(pen: Pen, row: JointState, to: JointWord) -> None:
    """Bring a joint into a state. Raises Refused where the rules between states forbid it."""
    if row.word == to:
        return
    now = rules.with_joint(pen.now, row.joint, joint_now(row))
    refuse(rules.why_not_move_joint(now, row.joint, to))
    become(pen, row, to)


def uncover(pen: Pen, row: JointState) -> str:
    """Take the cover off an open joint to work on it; what the diary says of it."""
    if not row.covered:
        return ""
    row.covered, row.uncovered_on = False, pen.today
    return ", cover off"


def become(pen: Pen, row: JointState, to: JointWord) -> None:
    """Give a joint its word, dated; whoever asks has seen to the rules.

    While it stays open, the date stays that of its opening: so long has dust come in.
    """
    if not (row.word in OPEN_WORDS and to in OPEN_WORDS):
        row.since = pen.today
    row.word = to
