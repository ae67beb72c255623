"""What to do about every verdict of a machine."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.state import PieceKey, PieceNow
from shimstock.trade.machine.words import GONE_WORDS, PartWord, Verdict
from shimstock.trade.measure.judge import Judged
from shimstock.trade.measure.named import all_of, piece_name
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.remedy import Remedy, What
from shimstock.trade.measure.sets import members_of, not_pairs
from shimstock.trade.measure.sizing import sized_remedies
from shimstock.trade.measure.train_found import TrainFound
from shimstock.trade.measure.train_remedies import train_remedies
from shimstock.trade.measure.verdicts import Verdicts

BEING_CHANGED = GONE_WORDS | {PartWord.IN_HAND, PartWord.AT_MACHINIST, PartWord.AT_BENCH}
"""States of a piece that was given up, is being replaced, or is out to be changed."""

FINE = (Verdict.GOOD, Verdict.SERVICEABLE)


def remedies(
    book: Book,
    verdicts: Verdicts,
    pieces: Mapping[PieceKey, PieceNow],
    *,
    chosen: Mapping[str, float] | None = None,
    trains: Mapping[str, TrainFound] | None = None,
) -> list[Remedy]:
    """What to do about every verdict, the most binding first.

    pieces: their states now. chosen: the clearance wanted for a clearance figure, in its unit;
    without one, the middle of its new range. trains: what the rocking of each train says, by its
    name in the book; a worn mesh takes both its gears along.
    """
    found = [
        *not_pairs(book, verdicts, pieces),
        *sized_remedies(book, verdicts, pieces, chosen or {}),
        *train_remedies(book, trains or {}),
    ]
    settled = {key for each in found for key in _settled(each)}
    found += _plain(book, verdicts, settled)
    not_here = {key for key, piece in pieces.items() if piece.word in BEING_CHANGED}
    found += _use_again(book, verdicts, not_here.union(*(each.pieces for each in found)))
    order = list(What)
    return sorted(found, key=lambda each: order.index(each.what))


def _settled(remedy: Remedy) -> Iterator[tuple[str, str]]:
    """Figures and pieces that a remedy already deals with."""
    if remedy.what in (What.MEASURE, What.MEASURE_AGAIN):
        return
    for figure in remedy.figures:
        yield figure, TOGETHER
        if remedy.what is not What.NOT_A_PAIR:
            yield from ((figure, piece) for _, piece in remedy.pieces)


def _plain(
    book: Book, verdicts: Verdicts, settled: Collection[tuple[str, str]]
) -> Iterator[Remedy]:
    for key, figure in book.measures.items():
        instances = book.parts[figure.of].instances
        latest = {
            piece: judged
            for piece in (*instances, TOGETHER)
            if (key, piece) not in settled and (judged := verdicts.latest(key, piece)) is not None
        }
        outside = {p: j for p, j in latest.items() if j.verdict is Verdict.WORN_OUT}
        doubtful = {
            p: j
            for p, j in latest.items()
            if j.verdict is Verdict.BORDERLINE and not (j.beyond and not j.settles)
        }  # not the play of a chain that was told apart: its links say what to do
        if outside:
            yield _put_right(book, key, figure, outside)
        if doubtful:
            yield _measure_again(book, key, figure, doubtful)


def _put_right(book: Book, key: str, figure: Figure, outside: Mapping[str, Judged]) -> Remedy:
    as_one = book.parts[figure.of].set is not None or TOGETHER in outside
    touched = _as_one(book, figure) if as_one else tuple((figure.of, p) for p in outside)
    who = all_of(len(touched)) if as_one and len(touched) > 1 else ""
    do = figure.if_outside or ("set it anew" if figure.kind == "setting" else "renew")
    together = f"; {who} together, as a set" if who and figure.kind != "setting" else ""
    return Remedy(
        what=What.SET if figure.kind == "setting" else What.PUT_RIGHT,
        part=figure.of,
        pieces=touched,
        figures=(key,),
        says=f"{figure.name}: {do}{together}",
        because=tuple(_said(book, figure, outside)),
        blocks=figure.kind != "setting",
        workings=tuple(judged.working for judged in outside.values()),
    )


def _as_one(book: Book, figure: Figure) -> tuple[PieceKey, ...]:
    """Every piece that goes with this figure: those of the part, or of the set that it stands for.

    A figure of one pump that compares both pumps, place by place, stands for the whole set.
    """
    part = book.parts[figure.of]
    if part.set is not None and figure.pair is not None and len(part.instances) == 1:
        return members_of(book, part.set)
    return tuple((figure.of, piece) for piece in part.instances)


def _measure_again(book: Book, key: str, figure: Figure, doubtful: Mapping[str, Judged]) -> Remedy:
    instances = book.parts[figure.of].instances
    touched = instances if TOGETHER in doubtful else tuple(doubtful)
    settles = next(iter(doubtful.values())).settles
    return Remedy(
        what=What.MEASURE_AGAIN,
        part=figure.of,
        pieces=tuple((figure.of, piece) for piece in touched),
        figures=(key,),
        says=f"{figure.name}: {settles[:1].lower()}{settles[1:]}",
        because=tuple(_said(book, figure, doubtful)),
        workings=tuple(judged.working for judged in doubtful.values()),
    )


def _said(book: Book, figure: Figure, judged: Mapping[str, Judged]) -> Iterator[str]:
    for piece, each in judged.items():
        who = TOGETHER if piece == TOGETHER else piece_name(book, figure.of, piece)
        yield f"{who}: {each.says}"


def _use_again(
    book: Book, verdicts: Verdicts, spoken_for: Collection[PieceKey]
) -> Iterator[Remedy]:
    for part, each in book.parts.items():
        figures = [key for key, figure in book.measures.items() if figure.of == part]
        fine = [
            piece
            for piece in each.instances
            if (part, piece) not in spoken_for and _all_fine(verdicts, figures, piece)
        ]
        if fine:
            keys = tuple((part, piece) for piece in fine)
            says = f"{', '.join(piece_name(book, *key) for key in keys)}: use again"
            yield Remedy(What.USE_AGAIN, part, keys, tuple(figures), says)


def _all_fine(verdicts: Verdicts, figures: Sequence[str], piece: str) -> bool:
    """Whether everything that can be judged on a piece has been read and is within its limit."""
    judged = [verdicts.latest(key, piece) for key in figures]
    return bool(judged) and all(
        each is not None and each.verdict in (*FINE, None) for each in judged
    )
