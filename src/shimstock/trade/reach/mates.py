"""What stands against a set: a mate missing, or two makes that nobody has proved to be a pair."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine.alike import different
from shimstock.trade.machine.state import MachineNow, PieceNow
from shimstock.trade.machine.words import PartWord
from shimstock.trade.reach.pieces import PieceKey, piece_name
from shimstock.trade.reach.reason import Reason

GONE = frozenset(
    {
        PartWord.REJECTED,
        PartWord.TO_BE_MADE,
        PartWord.WANTED,
        PartWord.QUOTED,
        PartWord.ON_ORDER,
        PartWord.IN_THE_POST,
        PartWord.LENT,
        PartWord.SCRAPPED,
    }
)
"""States in which a mate is not in the shed, or not fit to go in."""

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
        if state.word in GONE:
            called = piece_name(now.book, part, piece)
            would = "find its mate first, or replace the whole set"
            yield Reason(title, f"{called} is {state.word}", would, hard=True)
    yield from unlike(now, name)


def unlike(now: MachineNow, name: str) -> Iterator[Reason]:
    """Why the pieces of a set are no set: of two makes or sizes, not proved a pair."""
    the_set = now.book.sets[name]
    pieces = pieces_of_set(now, name)
    if all(state.proved_pair for state in pieces.values()):
        return
    for what, said in _told_apart(pieces):
        if what in the_set.same and len(said) > 1:
            number = "two" if len(said) == 2 else str(len(said))
            would = f"a mate of the same {what}; or proved a pair by {the_set.proof or BENCH}"
            why = f"of {number} {MANY[what]}, not proved a pair: {' and '.join(said)}"
            yield Reason(the_set.name or name, why, would, hard=True)


def _told_apart(pieces: dict[PieceKey, PieceNow]) -> Iterator[tuple[str, list[str]]]:
    for what in ("maker", "size"):
        said = (getattr(state, what) for state in pieces.values())
        yield what, sorted(different(said, sizes=what == "size"), key=str.casefold)


def sets_behind(now: MachineNow, parts: tuple[str, ...]) -> tuple[str, ...]:
    """Sets to which any of some parts belongs."""
    sets = (now.book.parts[part].set for part in parts)
    return tuple(dict.fromkeys(name for name in sets if name))
