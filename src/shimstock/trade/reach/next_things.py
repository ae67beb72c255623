"""What comes next on a machine, likeliest first, and which closed joints are not to be run on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import JointWord, PartWord, Verdict
from shimstock.trade.reach.closing import why_not_close

NOT_TO_BE_TRUSTED = {
    JointWord.DRY_FITTED: "only tried dry",
    JointWord.SEALED: "nipped, not torqued",
    JointWord.WEEPING: "weeps",
    JointWord.LEAKING: "leaks",
}
"""Joints that look closed and are not done with, and what is wrong with them."""

AWAY = (
    PartWord.WANTED,
    PartWord.QUOTED,
    PartWord.TO_BE_MADE,
    PartWord.ON_ORDER,
    PartWord.IN_THE_POST,
    PartWord.AT_MACHINIST,
    PartWord.AT_BENCH,
    PartWord.LENT,
)
"""Pieces that somebody is to be asked after."""

OF_A_KIND = 2
"""How many of a kind come next: more would be a list, not a next thing."""


@dataclass(frozen=True)
class NextThing:
    """One thing to do next.

    kind: cover or close a joint, settle a doubtful figure, ask after a piece that is away.
    where: key of the joint, figure or part. piece: which of several.
    """

    kind: Literal["cover", "close", "settle", "ask after"]
    where: str
    piece: str = ""


def next_things(now: MachineNow) -> tuple[NextThing, ...]:
    """What to do next: first what spoils, then what is ready, in doubt, or away."""
    opened = longest_open(now)
    bare = [NextThing("cover", key) for key in opened if not now.joint(key).covered]
    ready = [NextThing("close", key) for key in opened if not why_not_close(now, key)]
    doubt = [NextThing("settle", *key) for key in _in_doubt(now)]
    away = [NextThing("ask after", *key) for key in away_pieces(now)]
    return tuple(thing for kind in (bare, ready, doubt, away) for thing in kind[:OF_A_KIND])


def longest_open(now: MachineNow) -> tuple[str, ...]:
    """Joints that stand open, the longest first."""
    opened = [(key, joint) for key, joint in now.joints.items() if joint.is_open]
    opened.sort(key=lambda item: item[1].since.isoformat() if item[1].since else "")
    return tuple(key for key, _ in opened)


def away_pieces(now: MachineNow) -> tuple[tuple[str, str], ...]:
    """Pieces that are wanted, on order or out, by part and piece."""
    return tuple(key for key, piece in now.pieces.items() if piece.word in AWAY)


def not_to_be_trusted(now: MachineNow) -> dict[str, str]:
    """Joints not to be run on as they are, each with what is wrong."""
    return {
        key: NOT_TO_BE_TRUSTED[joint.word]
        for key, joint in now.joints.items()
        if joint.word in NOT_TO_BE_TRUSTED
    }


def _in_doubt(now: MachineNow) -> Iterator[tuple[str, str]]:
    """Figures and pieces whose verdict that counts now is borderline, and not accepted."""
    for key in dict.fromkeys((figure, piece) for figure, piece, _ in now.verdicts):
        verdict = now.latest(*key)
        if verdict and verdict.verdict == Verdict.BORDERLINE and not verdict.accepted:
            yield key
