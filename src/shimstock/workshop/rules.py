"""The one place where acts ask the trade what may be done as a machine stands."""

from dataclasses import replace

from shimstock.trade.machine.state import JointNow, MachineNow, PieceNow
from shimstock.trade.machine.words import JointWord, PartWord
from shimstock.trade.reach import closing, gates, moves
from shimstock.trade.reach.open_point import OpenPoint
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import Target
from shimstock.trade.reach.way import way_in

Why = tuple[Reason, ...]
"""Reasons against; none where it may be done."""


def with_joint(now: MachineNow, joint: str, state: JointNow) -> MachineNow:
    """The machine as it would stand with one joint changed."""
    return replace(now, joints={**now.joints, joint: state})


def with_piece(now: MachineNow, part: str, piece: str, state: PieceNow) -> MachineNow:
    """The machine as it would stand with one piece changed."""
    return replace(now, pieces={**now.pieces, (part, piece): state})


def joints_on_the_way(now: MachineNow, joint: str) -> tuple[str, ...]:
    """What must be opened to get a joint open, in order, the joint itself last."""
    return way_in(now, [Target("joint", joint)]).opens or (joint,)


def why_not_open(now: MachineNow, joint: str) -> Why:
    """Why a joint may not be opened."""
    return closing.why_not_open(now, joint)


def why_not_close(now: MachineNow, joint: str) -> Why:
    """Why a joint may not be closed for good."""
    return closing.why_not_close(now, joint)


def why_not_move_joint(now: MachineNow, joint: str, to: JointWord) -> Why:
    """Why a joint may not go from its state to another."""
    return moves.may_move_joint(now, joint, to)


def why_not_move_piece(now: MachineNow, part: str, piece: str, to: PartWord) -> Why:
    """Why a piece may not go from its state to another."""
    return moves.may_move_piece(now, part, piece, to)


def open_points(now: MachineNow) -> dict[str, OpenPoint]:
    """Everything that stands before any gate, by the key that an answer to it is kept under."""
    views = (gates.gate(now, key) for key in now.book.gates)
    return {point.key: point for view in views for point in view.open_points}


def why_not_pass(now: MachineNow, gate: str) -> Why:
    """What still blocks a gate."""
    return gates.may_pass(now, gate)
