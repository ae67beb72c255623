"""A joint's row for an act to change, and its move from one state to another."""

from shimstock.trade.machine.words import JointWord
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


def move(pen: Pen, row: JointState, to: JointWord) -> None:
    """Bring a joint into a state. Raises Refused where the rules between states forbid it."""
    if row.word == to:
        return
    now = rules.with_joint(pen.now, row.joint, joint_now(row))
    refuse(rules.why_not_move_joint(now, row.joint, to))
    become(pen, row, to)


def become(pen: Pen, row: JointState, to: JointWord) -> None:
    """Give a joint its word, dated; whoever asks has seen to the rules."""
    row.word = to
    row.since = pen.today
