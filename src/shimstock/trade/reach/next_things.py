"""What comes next on a machine, likeliest first, and which closed joints are not to be run on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import JointWord, Verdict
from shimstock.trade.reach.closing import why_not_close
from shimstock.trade.reach.faults_standing import faults_against_reading
from shimstock.trade.reach.moves import torque_due
from shimstock.trade.reach.readable import WaitsFor, waits_for
from shimstock.trade.reach.whereabouts import AWAY

NOT_TO_BE_TRUSTED = {
    JointWord.DRY_FITTED: "only tried dry",
    JointWord.SEALED: "nipped, not torqued",
    JointWord.WEEPING: "weeps",
    JointWord.LEAKING: "leaks",
}
"""Joints that look closed and are not done with, and what is wrong with them."""

OF_A_KIND = 2
"""How many of a kind come next: more would be a list, not a next thing."""


@dataclass(frozen=True)
class NextThing:
    """One thing to do next.

    kind: cover or close a joint, settle a doubtful figure, go by a chain of play that was told
    apart, ask after a piece that is away, or wait with a doubtful figure where nothing else is to
    be done.
    where: key of the joint, figure, chain or part. piece: which of several. waiting: figures and
    pieces in doubt that cannot be read before this one is back. until: what is waited for.
    """

    kind: Literal["cover", "close", "settle", "chain", "ask after", "wait"]
    where: str
    piece: str = ""
    waiting: tuple[tuple[str, str], ...] = ()
    until: WaitsFor | None = None


def next_things(now: MachineNow) -> tuple[NextThing, ...]:
    """What to do next: first what spoils, then what is ready, in doubt, or away.

    A doubt that cannot be settled as the machine stands is told with what it waits for.
    """
    opened = longest_open(now)
    bare = [NextThing("cover", key) for key in opened if not now.joint(key).covered]
    ready = [NextThing("close", key) for key in opened if not why_not_close(now, key)]
    waits = {key: (*_searches(now, key[0]), *waits_for(now, *key)) for key in _in_doubt(now)}
    doubt = [NextThing("settle", *key) for key, held in waits.items() if not held]
    doubt = [*(NextThing("chain", key) for key in _told_apart(now)), *doubt]
    named = (bare, ready, doubt, _to_ask_after(now, waits))
    found = tuple(thing for kind in named for thing in kind[:OF_A_KIND])
    return found or tuple(
        NextThing("wait", *key, until=held[0]) for key, held in [*waits.items()][:OF_A_KIND]
    )


def _searches(now: MachineNow, figure: str) -> tuple[WaitsFor, ...]:
    """Searches whose faults stand against running, or cranking, the engine to read a figure."""
    standing = faults_against_reading(now, figure)
    return tuple(dict.fromkeys(WaitsFor("search", str(each.search)) for each in standing))


def _to_ask_after(
    now: MachineNow, waits: Mapping[tuple[str, str], tuple[WaitsFor, ...]]
) -> list[NextThing]:
    """Pieces that are away, those first that a doubt waits for."""
    away = []
    for key in away_pieces(now):
        piece = WaitsFor("piece", *key)
        waiting = tuple(doubt for doubt, held in waits.items() if piece in held)
        away.append(NextThing("ask after", *key, waiting=waiting))
    return sorted(away, key=lambda each: not each.waiting)


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
        if joint.word is not JointWord.SEALED or torque_due(now, key)
    }


def _in_doubt(now: MachineNow) -> Iterator[tuple[str, str]]:
    """Figures and pieces whose verdict that counts now is borderline, and not accepted.

    The play of a chain that was told apart is in doubt no more: its links are judged themselves.
    """
    for key in dict.fromkeys((figure, piece) for figure, piece, _ in now.verdicts):
        verdict = now.latest(*key)
        if verdict is None or verdict.accepted or verdict.told_apart:
            continue
        if verdict.verdict == Verdict.BORDERLINE:
            yield key


def _told_apart(now: MachineNow) -> Iterator[str]:
    """Chains with too much play in all, of which every link is known by itself."""
    for key, train in now.book.trains.items():
        verdict = now.latest(train.figure, train.piece or "")
        if verdict and verdict.told_apart and not verdict.accepted:
            yield key
