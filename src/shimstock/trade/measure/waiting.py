"""Why a machinist's sheet must wait: pieces unread, or the new mating parts not on the bench."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.state import PieceNow
from shimstock.trade.machine.words import PartWord, Stage
from shimstock.trade.measure.machining import NextSize, allowance
from shimstock.trade.measure.named import piece_name
from shimstock.trade.measure.sized import Sized
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse, show

ARRIVED = frozenset(
    {
        PartWord.IN_HAND,
        PartWord.MEASURED,
        PartWord.PASSED,
        PartWord.PASSED_WITH_NOTE,
        PartWord.BACK_AND_CHECKED,
        PartWord.DRY_FITTED,
    }
)
"""States of a new mating part that lies on the bench."""


def waits_for(sized: Sized, size: NextSize, bores: Mapping[str, float]) -> Iterator[str]:
    """Each reason why the order or the machinist's sheet must wait.

    A bore is finished to its piston, so the new pistons must be in hand and measured; a journal
    needs its shells in hand. bores: by piece, what the measured pistons ask for.
    """
    for piece in sized.unread:
        yield f"{sized.name(piece)} is not measured: it may need a larger size"
    for mate, part in dict.fromkeys(sized.mates.values()):
        for piece in sized.book.parts[part].instances:
            name = piece_name(sized.book, part, piece)
            yield from _not_in_hand(name, sized.now(part, piece), size)
            read = (mate, piece, Stage.FINISHED) in sized.verdicts.measured
            if sized.outward and not read:
                yield f"the new {name} is not measured: finish to the part in hand"
    yield from _wrong_size(sized, size, bores)


def _not_in_hand(name: str, now: PieceNow, size: NextSize) -> Iterator[str]:
    if now.word not in ARRIVED or (now.size and not _is_size(now.size, size)):
        state = f"{now.word}, {now.size}" if now.size else str(now.word)
        yield f"{name} in {size.shown} is not in hand: {state}"
    elif not now.size:
        yield f"{name} is {now.word}, but its size is not written down: is it {size.shown}?"


def _is_size(text: str, size: NextSize) -> bool:
    try:
        return abs(parse(text, unit=size.unit).value - size.size) < 1e-6 * size.finished
    except NotUnderstood:
        return False


def _wrong_size(sized: Sized, size: NextSize, bores: Mapping[str, float]) -> Iterator[str]:
    """A part of the wrong size in the right box: its bore leaves wear marks, or is another size."""
    unit, least = sized.figure.measured_in, allowance(sized.figure)
    for piece, bore in bores.items():
        would = f"{sized.name(piece)} would be finished at {show(bore, unit)} for the part in hand"
        if bore - sized.worst < least * (1 - 1e-6):
            marks = f"which does not clean up {show(sized.worst, unit)}"
            yield f"{would}, {marks}: is it the right size?"
        elif abs(bore - size.finished) > least:
            yield f"{would}, and {size.shown} is {show(size.finished, unit)}: is it the right size?"
