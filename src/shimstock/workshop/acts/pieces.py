"""Pieces of parts: taken off, bagged, washed, passed, sent out, fitted."""

from datetime import datetime

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord
from shimstock.workshop import rests, rules
from shimstock.workshop.find import find_part, find_piece
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry, Machine, PieceState
from shimstock.workshop.now import piece_now
from shimstock.workshop.refused import refuse
from shimstock.workshop.wording import one_word, piece_named


def move_piece(
    *,
    machine: str | Machine,
    part: str,
    to: str,
    who: str,
    piece: str = "",
    maker: str | None = None,
    size: str | None = None,
    proved_pair: bool | None = None,
    note: str | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """Say how a piece of a part stands now, in one of the trade's words.

    to: the word. maker: whose mark it bears. size: which over- or undersize.
    proved_pair: a bench sheet proves it a pair with its mate. note: goes with the piece.
    What is not given stays as it is.
    Raises Refused where the rules between states forbid it, NotFound for an unknown name.
    """
    with writing("move", who=who, machine=machine, at=at) as pen:
        key = find_part(pen.book, part)
        row = _row(pen, key, find_piece(pen.book, key, piece))
        word = one_word(PartWord, to, "state of a part")
        given = {"maker": maker, "size": size, "proved_pair": proved_pair, "note": note}
        for name, value in given.items():
            if value is not None:
                setattr(row, name, value)
        _move(pen, row, word)
        pen.save(row)
        pen.says = f"{piece_named(pen.book, key, row.piece)}: {word}{_details(piece_now(row))}."
    return pen.entry


def _row(pen: Pen, part: str, piece: str) -> PieceState:
    row: PieceState | None = pen.machine.pieces.filter(part=part, piece=piece).first()
    return row or PieceState(machine=pen.machine, part=part, piece=piece)


def _move(pen: Pen, row: PieceState, to: PartWord) -> None:
    if row.word == to:
        return
    now = rules.with_piece(pen.now, row.part, row.piece, piece_now(row))
    refuse(rules.why_not_move_piece(now, row.part, row.piece, to))
    if to == PartWord.BUILT_IN:
        pen.rests_on |= rests.building_in(now, row.part)
    row.word = to
    row.since = pen.today


def _details(piece: PieceNow) -> str:
    pair = "proved a pair" if piece.proved_pair else ""
    said = [piece.maker, piece.size, pair, piece.note]
    return "".join(f", {each}" for each in said if each)
