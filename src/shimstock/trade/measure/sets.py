"""Parts that only work as a pair: of one make and near enough alike, or proved."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.alike import unlike
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import AS_MADE, PieceKey, PieceNow
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.named import listed, piece_name
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.remedy import Remedy, What
from shimstock.trade.measure.verdicts import Verdicts

MANY = {"maker": "makes", "size": "sizes"}
Pieces = Mapping[PieceKey, PieceNow]


def not_pairs(book: Book, verdicts: Verdicts, pieces: Pieces) -> Iterator[Remedy]:
    """Sets whose pieces do not belong together, by make, by size or by reading.

    A difference that is read counts against a set that has a proof, such as a bench sheet; other
    pair limits are put right by themselves.
    """
    for key, each in book.sets.items():
        members = members_of(book, key)
        unlike = tuple(_unlike(book, members, pieces, each.same))
        apart = tuple(_apart(book, verdicts, members)) if each.proof else ()
        if unlike or apart:
            yield _not_a_pair(book, key, members, unlike, apart)


def members_of(book: Book, set_name: str) -> tuple[PieceKey, ...]:
    """Every piece of every part of a set."""
    return tuple(
        (part, piece) for part in book.members(set_name) for piece in book.parts[part].instances
    )


def _unlike(
    book: Book, members: tuple[PieceKey, ...], pieces: Pieces, same: tuple[str, ...]
) -> Iterator[str]:
    now = {key: pieces.get(key, AS_MADE) for key in members}
    for what, said in unlike(now.values(), same):
        words = ((key, getattr(piece, what)) for key, piece in now.items())
        each = (f"{piece_name(book, *key)} is {word}" for key, word in words if word)
        number = "two" if len(said) == 2 else str(len(said))
        yield f"of {number} {MANY[what]}: {listed(each)}"


def _apart(
    book: Book, verdicts: Verdicts, members: tuple[PieceKey, ...]
) -> Iterator[tuple[str, str]]:
    parts = {part for part, _ in members}
    for key, figure in book.measures.items():
        if figure.of in parts and figure.pair is not None:
            together = verdicts.latest(key, TOGETHER)
            if together is not None and together.verdict is Verdict.WORN_OUT:
                yield key, f"{figure.name}: {together.says}"


def _not_a_pair(
    book: Book,
    key: str,
    members: tuple[PieceKey, ...],
    unlike: tuple[str, ...],
    apart: tuple[tuple[str, str], ...],
) -> Remedy:
    each = book.sets[key]
    names = listed(piece_name(book, *member) for member in members)
    proof = f" A mixed pair would need {each.proof}." if each.proof and not apart else ""
    cores = any(book.parts[part].core for part, _ in members)
    keep = " Keep the old ones whole, as cores, until they are credited." if cores else ""
    return Remedy(
        what=What.NOT_A_PAIR,
        part=members[0][0],
        pieces=members,
        figures=tuple(figure for figure, _ in apart),
        says=f"{names}: not a pair; find a mate for one, or a matched pair.{proof}{keep}",
        because=(*unlike, *(says for _, says in apart)),
        blocks=True,
    )
