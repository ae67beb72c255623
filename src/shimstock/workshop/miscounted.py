"""A count of what came off that may be wrong itself, and the way back to it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from shimstock.trade.reach.closing import counts_apart
from shimstock.workshop.places import joint_place
from shimstock.workshop.told import opening_of

if TYPE_CHECKING:
    from shimstock.trade.machine.state import MachineNow
    from shimstock.trade.reach.reason import Reason
    from shimstock.workshop.models import Machine


def opening_to_undo(machine: Machine, now: MachineNow, joint: str) -> int | None:
    """The entry by which an open joint was opened; None where the counts of bolts agree."""
    if not now.joint(joint).is_open or not _apart(now, joint):
        return None
    return opening_of(machine, joint_place(joint))


def with_way_back(
    now: MachineNow, joint: str, against: tuple[Reason, ...], opening: int | None
) -> tuple[Reason, ...]:
    """The reasons against closing; those of counts say also which entry to undo.

    opening: the entry by which the joint was opened; None where there is nothing to undo.
    """
    if opening is None:
        return against
    apart = _apart(now, joint)
    back = f"; or, where the count that came off is wrong, undo entry {opening}, the opening"
    return tuple(
        replace(each, would_do=each.would_do + back) if each in apart else each for each in against
    )


def _apart(now: MachineNow, joint: str) -> set[Reason]:
    return set(counts_apart(now.book.joints[joint], now.joint(joint)))
