"""Which parts are in the machine, where they came from, and which of them belong together."""

from dataclasses import dataclass

from shimstock.faces.paper.kept import Kept
from shimstock.faces.paper.signs import PART_SIGNS
from shimstock.faces.paper.wording import Under, under
from shimstock.trade.machine.book import Set
from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord
from shimstock.trade.reach.mates import against_set
from shimstock.workshop.wording import called, listed

READY = (PartWord.PASSED, PartWord.PASSED_WITH_NOTE, PartWord.IN_HAND, PartWord.BACK_AND_CHECKED)
IN_PLACE = (PartWord.FITTED, PartWord.BUILT_IN, PartWord.PAINTED)


@dataclass(frozen=True)
class PieceRow:
    """One piece of a part, on one line."""

    name: str
    mark: str
    letter: str
    fill: str
    ink: str
    word: str
    maker: str
    size: str
    note: str


@dataclass(frozen=True)
class SetRow:
    """Parts that belong together, and whether they do."""

    name: str
    members: str
    word: str
    proof: str


@dataclass(frozen=True)
class PartsTold:
    """The pieces that somebody touched, those not in place, and the sets."""

    touched: tuple[PieceRow, ...]
    untouched: int
    not_in_place: tuple[Under, ...]
    """By the state of each."""
    not_ready: tuple[Under, ...]
    """Those that could not go in as they are, by what keeps them: away, wanted, rejected."""
    sets: tuple[SetRow, ...]
    sets_unknown: tuple[str, ...]
    """Sets of which nobody has noted a maker, nor anything against them."""


def parts_told(kept: Kept) -> PartsTold:
    """Every piece of every part, either on a line of its own or counted as never touched."""
    touched: list[PieceRow] = []
    away: list[tuple[PartWord, str]] = []
    untouched = 0
    for key, part in kept.book.parts.items():
        for name, piece in kept.now.pieces_of(key).items():
            if piece == PieceNow():
                untouched += 1
                continue
            touched.append(_row(called(part.name, name), part.mark or "", piece))
            if piece.word not in IN_PLACE:
                away.append((piece.word, called(part.name, name)))
    sets = [_set(kept, key, one) for key, one in kept.book.sets.items()]
    return PartsTold(
        touched=tuple(touched),
        untouched=untouched,
        not_in_place=under((word.value, name) for word, name in away),
        not_ready=under((PART_SIGNS[word].word, name) for word, name in away if word not in READY),
        sets=tuple(row for row in sets if row.word),
        sets_unknown=tuple(row.name for row in sets if not row.word),
    )


def _row(name: str, mark: str, piece: PieceNow) -> PieceRow:
    sign = PART_SIGNS[piece.word]
    return PieceRow(
        name=name,
        mark=mark,
        letter=sign.letter,
        fill=sign.fill,
        ink=sign.ink,
        word=piece.word.value,
        maker=piece.maker,
        size=piece.size,
        note=piece.note,
    )


def _set(kept: Kept, key: str, one: Set) -> SetRow:
    members = {
        called(kept.book.parts[part].name, name): piece
        for part in kept.book.members(key)
        for name, piece in kept.now.pieces_of(part).items()
    }
    told = [f"{name} ({piece.maker})" if piece.maker else name for name, piece in members.items()]
    return SetRow(
        name=one.name or key.replace("-", " "),
        members=listed(told),
        word=_whole(kept, key, list(members.values())),
        proof=one.proof or "",
    )


def _whole(kept: Kept, key: str, pieces: list[PieceNow]) -> str:
    """What stands against a set, or what speaks for it; empty where nobody has noted anything."""
    against = [reason.why for reason in against_set(kept.now, key)]
    if against:
        return "; ".join(against)
    if pieces and all(piece.proved_pair for piece in pieces):
        return "proved to belong together"
    makers = {piece.maker.strip() for piece in pieces}
    if makers <= {""}:
        return ""
    return "maker's mark not noted on every piece" if "" in makers else "of one make"
