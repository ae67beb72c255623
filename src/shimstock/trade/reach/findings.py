"""What a walk round the machine would find: left open too long, rejected and sealed, not a pair."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import PartWord
from shimstock.trade.reach.mates import pieces_of_set, unlike
from shimstock.trade.reach.moves import ON_MACHINE, SHUT
from shimstock.trade.reach.pieces import piece_name, pieces_at

DAYS_UNCOVERED = 7
"""Days after which an open joint that nobody covered is a finding: rust, mice, dust."""


@dataclass(frozen=True)
class Finding:
    """Something that is not as it should be.

    kind and where: the joint, part or set it is about. what: what is wrong. would_do: what to do.
    """

    kind: Literal["joint", "part", "set"]
    where: str
    what: str
    would_do: str


def findings(now: MachineNow) -> tuple[Finding, ...]:
    """Everything on a machine that breaks a rule of the shed today."""
    return (*_left_open(now), *_rejected_and_sealed(now), *_no_pair_fitted(now))


def _left_open(now: MachineNow) -> Iterator[Finding]:
    for key, joint in now.book.joints.items():
        state = now.joint(key)
        if not state.is_open or state.covered or state.since is None:
            continue
        if state.uncovered_on is not None and state.uncovered_on >= now.today:
            continue  # somebody is at work on it
        days = (now.today - state.since).days
        if days >= DAYS_UNCOVERED:
            bare = f" since {state.uncovered_on:%d %b %Y}" if state.uncovered_on else ""
            what = f"{joint.name} has stood open for {days} days, not covered{bare}"
            yield Finding("joint", key, what, "cover it, and look for rust, mice and dust")
        elif joint.cover_same_night and days >= 1:
            what = f"{joint.name} was left open overnight, not covered"
            yield Finding("joint", key, what, "oil the bright faces and cover it")


def _rejected_and_sealed(now: MachineNow) -> Iterator[Finding]:
    rejected = [at for at, state in now.pieces.items() if state.word is PartWord.REJECTED]
    for part, piece in rejected:
        for key, joint in now.book.joints.items():
            behind = part in (*joint.between, *joint.reaches)
            here = behind and piece in pieces_at(now.book, key, part)
            if here and now.joint(key).word in SHUT:
                called = piece_name(now.book, part, piece)
                what = f"{called} is rejected, and {joint.name} is {now.joint(key).word} over it"
                yield Finding("joint", key, what, "open it, or judge the part again")


def _no_pair_fitted(now: MachineNow) -> Iterator[Finding]:
    for name in now.book.sets:
        words = {state.word for state in pieces_of_set(now, name).values()}
        for reason in unlike(now, name) if words & ON_MACHINE else ():
            yield Finding("set", name, f"{reason.what} is {reason.why}", reason.would_do)
