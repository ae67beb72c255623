"""What stands against a set: a mate missing, or two makes that nobody has proved to be a pair."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine import alike
from shimstock.trade.machine.state import MachineNow, PieceKey, PieceNow
from shimstock.trade.machine.words import GONE_WORDS
from shimstock.trade.reach.pieces import piece_name
from shimstock.trade.reach.reason import Reason

MANY = {"maker": "makes", "size": "sizes"}
BENCH = "a bench sheet"


def pieces_of_set(now: MachineNow, name: str) -> dict[PieceKey, PieceNow]:
    """Every piece that belongs to a set, with its state."""
    return {
        (part, piece): state
        for part in now.book.members(name)
        for piece, state in now.pieces_of(part).items()
    }


def against_set(now: MachineNow, name: str) -> Iterator[Reason]:
    """Why a set may not be built in: a mate gone, or pieces that differ and are not proved."""
    title = now.book.sets[name].name or name
    pieces = pieces_of_set(now, name)
    for (part, piece), state in pieces.items():
        if state.word in GONE_WORDS:
            called = piece_name(now.book, part, piece)
            would = "find its mate first, or replace the whole set"
            yield Reason(title, f"{called} is {state.word}", would, hard=True)
    yield from unlike(now, name)


def unlike(now: MachineNow, name: str) -> Iterator[Reason]:
    """Why the pieces of a set are no set: of two makes or sizes, not proved a pair."""
    the_set = now.book.sets[name]
    for what, said in alike.unlike(pieces_of_set(now, name).values(), the_set.same):
        number = "two" if len(said) == 2 else str(len(said))
        would = f"a mate of the same {what}; or proved a pair by {the_set.proof or BENCH}"
        why = f"of {number} {MANY[what]}, not proved a pair: {' and '.join(said)}"
        yield Reason(the_set.name or name, why, would, hard=True)


def sets_behind(now: MachineNow, parts: tuple[str, ...]) -> tuple[str, ...]:
    """Sets to which any of some parts belongs."""
    sets = (now.book.parts[part].set for part in parts)
    return tuple(dict.fromkeys(name for name in sets if name))
