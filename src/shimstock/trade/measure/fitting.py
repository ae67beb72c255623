"""The bore to finish to for each new piston in hand, and the gap its rings should have."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.machining import NextSize, finished_bore
from shimstock.trade.measure.plausible import middle_of_new
from shimstock.trade.measure.sized import Sized
from shimstock.trade.numbers.quantity import convert
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.engine.ring_gap import ring_gap


def finished_bores(
    sized: Sized, chosen: Mapping[str, float]
) -> Iterator[tuple[str, Worked[float]]]:
    """The bore to finish to, for each piece whose new piston has been measured.

    chosen: the clearance wanted for a clearance figure, in its unit; else the middle of new.
    """
    unit = sized.figure.measured_in
    for key, (mate, part) in sized.mates.items():
        gap = sized.book.measures[key]
        wanted = chosen.get(key, middle_of_new(gap))
        if not sized.outward or wanted is None:
            continue
        for piece in sized.instances:
            theirs = piece if piece in sized.book.parts[part].instances else ""
            new = sized.verdicts.measured.get((mate, theirs, Stage.FINISHED))
            if new is not None:
                skirt = convert(new.value, new.unit, unit)
                yield piece, finished_bore(skirt, convert(wanted, gap.measured_in, unit), unit)


def ring_gaps(sized: Sized, size: NextSize) -> Iterator[Working]:
    """The ring gap rule, where rings sit on the part that runs in this bore."""
    runs_in_it = {part for _, part in sized.mates.values()}
    ringed = (
        each.sits_on in runs_in_it and "ring" in each.name.lower()
        for each in sized.book.parts.values()
    )
    if sized.outward and any(ringed):
        yield ring_gap(bore=Length(size.finished), unit=size.unit).working
