"""Whether a figure can be read again as the machine stands, and what that waits for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.machine.book import Train
from shimstock.trade.machine.state import MachineNow, PieceKey
from shimstock.trade.reach.pieces import pieces_at
from shimstock.trade.reach.whereabouts import AWAY, DONE_WITH, engine_apart, is_off


@dataclass(frozen=True)
class WaitsFor:
    """What must be back, closed or settled before a figure can be read again.

    where: key of the part or joint, or the number of a search. piece: which of several.
    """

    kind: Literal["piece", "joint", "search"]
    where: str
    piece: str = ""


def waits_for(now: MachineNow, figure: str, piece: str) -> tuple[WaitsFor, ...]:
    """All that reading a figure again waits for; nothing where it can be read now.

    What lies on the bench can be read there, unless the engine must have run for it, or a whole
    chain is felt at its end.
    """
    return tuple(dict.fromkeys(_held_up(now, figure, piece)))


def _held_up(now: MachineNow, figure: str, piece: str) -> Iterator[WaitsFor]:
    running, chain = now.book.measures[figure].running, _felt_at(now, figure)
    assembled = running or chain is not None
    for key in _read_on(now, figure, piece, chain):
        if now.piece(*key).word in AWAY | DONE_WITH or (assembled and is_off(now, *key)):
            yield WaitsFor("piece", *key)
    apart = engine_apart(now) if running else ()
    for joint in sorted(now.open_joints):
        if joint in apart or _spreads(chain, joint):
            yield from _open_at(now, joint)


def _open_at(now: MachineNow, joint: str) -> Iterator[WaitsFor]:
    """What is away of the parts that meet at an open joint, and then the joint."""
    for part in now.book.joints[joint].between:
        for piece in pieces_at(now.book, joint, part):
            if now.piece(part, piece).word in AWAY:
                yield WaitsFor("piece", part, piece)
    yield WaitsFor("joint", joint)


def _read_on(now: MachineNow, figure: str, piece: str, chain: Train | None) -> Iterator[PieceKey]:
    """The pieces that a figure is read on: its own, those it follows from, those of its chain."""
    measures = now.book.measures
    derive = measures[figure].derive
    parts = [measures[key].of for key in (figure, *(derive.sources if derive else ()))]
    for link in chain.links if chain else ():
        named = (measures[link.figure].of, link.driver, link.driven)
        parts += [part for part in named if part in now.book.parts]
    for part in dict.fromkeys(parts):
        pieces = now.book.parts[part].instances
        yield from ((part, each) for each in ((piece,) if piece in pieces else pieces))


def _felt_at(now: MachineNow, figure: str) -> Train | None:
    """The chain at whose end a figure is felt; None for a figure of one part."""
    for chain in now.book.trains.values():
        holds = (link.hold.figure for link in chain.links if link.hold)
        if figure in (chain.figure, *holds):
            return chain
    return None


def _spreads(chain: Train | None, joint: str) -> bool:
    return chain is not None and any(link.spread_by == joint for link in chain.links)
