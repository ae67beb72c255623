"""Where a piece is: on the machine, off it, or away; and what keeps the engine from running."""

from __future__ import annotations

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import PartWord
from shimstock.trade.reach.goals import reaching_joints

AWAY = frozenset(
    {
        PartWord.WANTED,
        PartWord.QUOTED,
        PartWord.TO_BE_MADE,
        PartWord.ON_ORDER,
        PartWord.IN_THE_POST,
        PartWord.AT_MACHINIST,
        PartWord.AT_BENCH,
        PartWord.LENT,
    }
)
"""Pieces that somebody is to be asked after."""

NOT_HERE = AWAY | {PartWord.SCRAPPED}
"""Pieces that are not in the shed to be looked at; one that was rejected is."""

DONE_WITH = frozenset({PartWord.REJECTED, PartWord.SCRAPPED})
"""Pieces that nobody reads again."""

OFF = frozenset(
    {
        PartWord.OFF,
        PartWord.BAGGED,
        PartWord.WASHED,
        PartWord.MEASURED,
        PartWord.REJECTED,
        PartWord.IN_HAND,
        PartWord.BACK_AND_CHECKED,
        PartWord.PARKED,
    }
)
"""Pieces that are in the shed, and not on the machine: nothing is closed over them as they are."""

PASSED = frozenset({PartWord.PASSED, PartWord.PASSED_WITH_NOTE})
"""Pieces that may lie on the bench, and may be closed over: their joints tell."""


def is_off(now: MachineNow, part: str, piece: str = "") -> bool:
    """Whether a piece is in the shed, and not on the machine.

    One that was passed is held to lie on the bench while a joint stands open that is closed with
    it, or over it where it has none of its own.
    piece: which of several, "" where there is one.
    """
    word = now.piece(part, piece).word
    if word in PASSED:
        leading = reaching_joints(now.book, part, piece)
        own = [key for key in leading if now.book.joints[key].between[0] == part]
        return any(now.joint(key).is_open for key in own or leading)
    return word in OFF


def engine_apart(now: MachineNow) -> tuple[str, ...]:
    """The open joints that keep the engine from turning or running, in the book's order."""
    joints = now.book.joints
    return tuple(key for key, joint in joints.items() if joint.to_run and key in now.open_joints)
