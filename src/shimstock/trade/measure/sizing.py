"""Parts machined to the next size: one size for the whole set, and nothing ordered on a guess."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.state import AS_MADE, PieceKey, PieceNow
from shimstock.trade.machine.words import PartWord, Stage
from shimstock.trade.measure.machining import NextSize, finished_bore, next_size
from shimstock.trade.measure.named import all_of, listed, piece_name
from shimstock.trade.measure.remedy import Remedy, What
from shimstock.trade.measure.verdicts import Verdicts
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import convert, parse, show
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.engine.ring_gap import ring_gap

Pieces = Mapping[PieceKey, PieceNow]
Chosen = Mapping[str, float]

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
VERBS = frozenset({"bore", "grind", "turn", "hone", "ream", "face"})
"""How a book begins when it says what to do: the first word is the verb."""


def sized_remedies(
    book: Book, verdicts: Verdicts, pieces: Pieces, chosen: Chosen
) -> Iterator[Remedy]:
    """For each figure with sizes on offer: machine, renew, or measure first.

    chosen: the clearance wanted for a clearance figure, in its unit.
    """
    for key, figure in book.measures.items():
        if figure.sizes:
            yield from _for(book, key, figure, verdicts, pieces, chosen)


def family(book: Book, key: str) -> tuple[str, ...]:
    """The sized figure and those that machining it cures.

    Its taper and out-of-round, and any other figure of the part for which the book begins with
    the same verb, such as a drum's out-of-round read with a dial: "turn both drums alike".
    """
    figure = book.measures[key]
    cured = (name for name, each in book.measures.items() if _cured_with(each, key, figure))
    return (key, *cured)


def _cured_with(each: Figure, key: str, figure: Figure) -> bool:
    if each.derive:
        return key in (each.derive.taper_of, each.derive.out_of_round_of)
    return each.of == figure.of and not each.sizes and _verb(each) in VERBS & {_verb(figure)}


def mates(book: Book, key: str) -> dict[str, tuple[str, str]]:
    """Clearance figures that the sized figure takes part in, each with its mate's figure and part.

    {"piston-clearance": ("piston-skirt", "piston")}
    """
    found = {}
    for name, each in book.measures.items():
        if each.derive and key in (each.derive.hole, each.derive.shaft):
            other = each.derive.shaft if key == each.derive.hole else each.derive.hole
            if other:
                found[name] = (other, book.measures[other].of)
    return found


def _for(
    book: Book, key: str, figure: Figure, verdicts: Verdicts, pieces: Pieces, chosen: Chosen
) -> Iterator[Remedy]:
    instances = book.parts[figure.of].instances
    names, stage = family(book, key), _stage(book, key, verdicts)
    failing = {
        (name, piece): judged.says
        for name in names
        for piece in instances
        if (judged := verdicts.judged.get((name, piece, stage))) and judged.beyond
    }
    sizes = {
        piece: value.value
        for piece in instances
        if (value := verdicts.measured.get((key, piece, stage))) is not None
    }
    unread = [p for p in instances if verdicts.latest_measured(key, p) is None]
    if failing and sizes:
        worst = max(sizes.values()) if _outward(figure) else min(sizes.values())
        because = _because(book, figure, failing)
        yield _machined(book, key, next_size(figure, worst), because, verdicts, pieces, chosen)
    elif unread:
        yield _measure_first(book, figure, names, unread)


def _stage(book: Book, key: str, verdicts: Verdicts) -> Stage:
    """As found, until every piece has been read as finished: so the size stays as decided."""
    instances = book.parts[book.measures[key].of].instances
    done = all((key, piece, Stage.FINISHED) in verdicts.measured for piece in instances)
    return Stage.FINISHED if done else Stage.FOUND


def _outward(figure: Figure) -> bool:
    return figure.sizes[0].value > 0


def _measure_first(book: Book, figure: Figure, names: tuple[str, ...], unread: list[str]) -> Remedy:
    who = listed(piece_name(book, figure.of, piece) for piece in unread)
    reason = f"{who} not measured: {figure.name}"
    keys = tuple((figure.of, piece) for piece in unread)
    says = f"Measure {who}; do not order sized parts yet"
    return Remedy(What.MEASURE, figure.of, keys, names, says, held=(reason,))


def _because(book: Book, figure: Figure, failing: Mapping[tuple[str, str], str]) -> tuple[str, ...]:
    said = [
        f"{piece_name(book, figure.of, piece)}, {book.measures[name].name}: {says}"
        for (name, piece), says in failing.items()
    ]
    failed = {piece for _, piece in failing}
    fine = [piece for piece in book.parts[figure.of].instances if piece not in failed]
    if fine:
        who = listed(piece_name(book, figure.of, piece) for piece in fine)
        within = "is within its limits" if len(fine) == 1 else "are within their limits"
        said.append(f"{who} {within}, but the set stays together: one size for all")
    return tuple(said)


def _machined(
    book: Book,
    key: str,
    found: Worked[NextSize | None],
    because: tuple[str, ...],
    verdicts: Verdicts,
    pieces: Pieces,
    chosen: Chosen,
) -> Remedy:
    figure, names = book.measures[key], family(book, key)
    todo = _still_to_do(book, key, verdicts)
    keys = tuple((figure.of, piece) for piece in todo)
    if found.value is None:
        says = f"{figure.name}: no size on offer cleans up the worst place; a sleeve or new parts"
        return Remedy(What.RENEW, figure.of, keys, names, says, because, workings=(found.working,))
    size = found.value
    bores = dict(_bores(book, key, verdicts, chosen))
    diameter = show(size.finished, size.unit)
    whole = len(todo) > 1 and len(todo) == len(book.parts[figure.of].instances)
    names_of = listed(piece_name(book, figure.of, piece) for piece in todo)
    who = all_of(len(todo)) if whole else names_of
    return Remedy(
        what=What.MACHINE,
        part=figure.of,
        pieces=keys,
        figures=names,
        says=f"{_verb(figure)} {who} to {size.shown}, {diameter} finished",
        because=because,
        size=size.shown,
        finished=size.finished,
        unit=size.unit,
        bores={piece: worked.value for piece, worked in bores.items()},
        held=tuple(_held(book, key, size, verdicts, pieces)),
        workings=(
            found.working,
            *(worked.working for worked in bores.values()),
            *_ring_gap(book, key, size),
        ),
    )


def _still_to_do(book: Book, key: str, verdicts: Verdicts) -> tuple[str, ...]:
    """Pieces that are not finished yet; all of them where all must be done again."""
    instances = book.parts[book.measures[key].of].instances
    left = (p for p in instances if (key, p, Stage.FINISHED) not in verdicts.measured)
    return tuple(left) or instances


def _verb(figure: Figure) -> str:
    first = (figure.if_outside or "").split(" ", 1)[0].strip(",;.").lower()
    return first if first in VERBS else "machine"


def _bores(
    book: Book, key: str, verdicts: Verdicts, chosen: Chosen
) -> Iterator[tuple[str, Worked[float]]]:
    """The bore to finish to, for each piece whose new piston has been measured."""
    figure = book.measures[key]
    for gap_key, (mate, part) in mates(book, key).items():
        gap = book.measures[gap_key]
        wanted = chosen.get(gap_key, _middle(gap))
        if not gap.derive or gap.derive.hole != key or wanted is None:
            continue
        for piece in book.parts[figure.of].instances:
            theirs = piece if piece in book.parts[part].instances else ""
            new = verdicts.measured.get((mate, theirs, Stage.FINISHED))
            if new is not None:
                unit = figure.measured_in
                skirt = convert(new.value, new.unit, unit)
                yield piece, finished_bore(skirt, convert(wanted, gap.measured_in, unit), unit)


def _middle(gap: Figure) -> float | None:
    new = gap.as_new
    if new is None or new.low is None or new.high is None:
        return None
    return (new.low + new.high) / 2


def _held(
    book: Book, key: str, size: NextSize, verdicts: Verdicts, pieces: Pieces
) -> Iterator[str]:
    """Why the machinist's sheet must wait: a piece unread, or a new mate not there or unread."""
    figure = book.measures[key]
    for piece in book.parts[figure.of].instances:
        if verdicts.latest_measured(key, piece) is None:
            yield f"{piece_name(book, figure.of, piece)} is not measured: it may need a larger size"
    for mate, part in dict.fromkeys(mates(book, key).values()):
        for piece in book.parts[part].instances:
            name = piece_name(book, part, piece)
            yield from _not_in_hand(name, pieces.get((part, piece), AS_MADE), size)
            if _outward(figure) and (mate, piece, Stage.FINISHED) not in verdicts.measured:
                yield f"the new {name} is not measured: finish to the part in hand"


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


def _ring_gap(book: Book, key: str, size: NextSize) -> Iterator[Working]:
    """The ring gap rule, where rings sit on the part that runs in this bore."""
    gaps = mates(book, key)
    bored_for = {part for name, (_, part) in gaps.items() if book.measures[name].derive}
    if _outward(book.measures[key]) and any(
        each.sits_on in bored_for and "ring" in each.name.lower() for each in book.parts.values()
    ):
        yield ring_gap(bore=Length(size.finished), unit=size.unit).working
