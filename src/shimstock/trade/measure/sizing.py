"""Parts machined to the next size: one size for the whole set, and nothing ordered on a guess."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import PieceKey, PieceNow
from shimstock.trade.measure.fitting import finished_bores, ring_gaps
from shimstock.trade.measure.machining import NextSize, next_size
from shimstock.trade.measure.named import all_of, listed
from shimstock.trade.measure.remedy import Remedy, What
from shimstock.trade.measure.sized import STANDING, Sized, verb
from shimstock.trade.measure.verdicts import Verdicts
from shimstock.trade.measure.waiting import waits_for
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.working import Working


def sized_remedies(
    book: Book,
    verdicts: Verdicts,
    pieces: Mapping[PieceKey, PieceNow],
    chosen: Mapping[str, float],
) -> Iterator[Remedy]:
    """For each figure with sizes on offer: machine, renew, or measure first.

    chosen: the clearance wanted for a clearance figure, in its unit.
    """
    for key, figure in book.measures.items():
        if not figure.sizes:
            continue
        sized = Sized(book, key, verdicts, pieces)
        if sized.failing and sized.values:
            yield _next_size(sized, chosen)
        elif sized.unread:
            yield _measure_first(sized)


def _measure_first(sized: Sized) -> Remedy:
    who = listed(sized.name(piece) for piece in sized.unread)
    return Remedy(
        what=What.MEASURE,
        part=sized.figure.of,
        pieces=tuple((sized.figure.of, piece) for piece in sized.unread),
        figures=sized.family,
        says=f"Measure {who}; do not order sized parts yet",
        held=(f"{who} not measured: {sized.figure.name}",),
    )


def _next_size(sized: Sized, chosen: Mapping[str, float]) -> Remedy:
    found = next_size(sized.figure, sized.worst)
    if found.value is not None:
        return _machine(sized, found.value, found.working, chosen)
    return Remedy(
        what=What.RENEW,
        part=sized.figure.of,
        pieces=tuple((sized.figure.of, piece) for piece in sized.instances),
        figures=sized.family,
        says=f"{sized.figure.name}: no size on offer cleans up the worst place; "
        "a sleeve or new parts",
        because=tuple(_because(sized)),
        blocks=True,
        workings=(found.working,),
    )


def _machine(sized: Sized, size: NextSize, working: Working, chosen: Mapping[str, float]) -> Remedy:
    to_do = sized.to_do or sized.instances
    finished = dict(finished_bores(sized, chosen))
    bores = {piece: worked.value for piece, worked in finished.items()}
    more = (*(worked.working for worked in finished.values()), *ring_gaps(sized, size))
    return Remedy(
        what=What.MACHINE,
        part=sized.figure.of,
        pieces=tuple((sized.figure.of, piece) for piece in to_do),
        figures=sized.family,
        says=f"{verb(sized.figure)} {_who(sized, to_do)} to {size.shown}, "
        f"{show(size.finished, size.unit)} finished",
        because=tuple(_because(sized)),
        size=size.shown,
        finished=size.finished,
        unit=size.unit,
        bores=bores,
        held=tuple(waits_for(sized, size, bores)),
        blocks=True,
        workings=(working, *more),
    )


def _who(sized: Sized, to_do: tuple[str, ...]) -> str:
    if len(to_do) > 1 and to_do == sized.instances:
        return all_of(len(to_do))
    return listed(sized.name(piece) for piece in to_do)


def _because(sized: Sized) -> Iterator[str]:
    """What failed, and which pieces are machined only to stay alike."""
    for (name, piece), says in sized.failing.items():
        yield f"{sized.name(piece)}, {sized.book.measures[name].name}: {says}"
    failed = {piece for _, piece in sized.failing}
    for one, several in STANDING:
        alike = [p for p in sized.instances if p not in failed and sized.standing(p) == one]
        if alike:
            who = listed(sized.name(piece) for piece in alike)
            stands = one if len(alike) == 1 else several
            yield f"{who} {stands}, but the set stays together: one size for all"
