"""Joints that were closed and not yet tightened to the book's torque, as points of a gate."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.reach.moves import torque_due
from shimstock.trade.reach.open_point import OpenPoint
from shimstock.trade.reach.target import Target
from shimstock.trade.reach.way import way_in

TORQUE = 10.0
"""Minutes to tighten one joint to its figure; a stand-in figure."""


def not_torqued(now: MachineNow) -> Iterator[OpenPoint]:
    """Every joint that was closed and not torqued, in the book's order."""
    for key in now.book.joints:
        if torque_due(now, key):
            yield _point(now, key)


def open_for(now: MachineNow, joints: Collection[str]) -> tuple[str, ...]:
    """What must be opened to get a spanner on closed joints, the joints themselves left out.

    Solved once for a machine as it stands, since several gates ask the same.
    """
    asked = ("open for", *joints)
    if asked not in now.solved:
        way = way_in(now, [Target("joint", key) for key in joints])
        now.solved[asked] = tuple(key for key in way.opens if key not in joints)
    return now.solved[asked]


def minutes_for_torque(now: MachineNow, joints: Collection[str]) -> float:
    """Minutes to open and close what stands before closed joints, without the tightening."""
    first = [now.book.joints[key] for key in open_for(now, joints)]
    return sum(joint.open + joint.close for joint in first)


def _point(now: MachineNow, key: str) -> OpenPoint:
    name = now.book.joints[key].name
    first = [now.book.joints[each].name for each in open_for(now, (key,))]
    would = "tighten it to the figure and write down the torque"
    if first:
        would = f"open {' and '.join(first)} first, then {would}"
    minutes = minutes_for_torque(now, (key,)) + TORQUE
    what = f"{name} is closed, not torqued"
    return OpenPoint(f"torque:{key}", "torque", key, what, minutes, True, would)
