"""Which bores were read at several depths, as the wear chart wants them."""

from shimstock.faces.paper.kept import Kept
from shimstock.faces.paper.wear_chart import Bore, Mark, Trace
from shimstock.trade.machine.book import At, Figure
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.machining import next_size
from shimstock.trade.numbers.quantity import convert, decimals_for, show
from shimstock.workshop.models import ReadingRow
from shimstock.workshop.wording import called


def bores(kept: Kept) -> tuple[Bore, ...]:
    """Each piece that was read at several depths, in the order of the book."""
    found: list[Bore] = []
    for key, figure in kept.book.figures.items():
        if figure.at is None or len(figure.at.depths) < 2:
            continue
        read = {
            piece: traces
            for piece in kept.book.parts[figure.of].instances
            if (traces := _traces(kept, key, figure, figure.at, piece))
        }
        size = _next_size(figure, [trace for traces in read.values() for trace in traces])
        found += [_bore(figure, figure.at, piece, read[piece], size) for piece in read]
    return tuple(found)


def _bore(figure: Figure, at: At, piece: str, traces: tuple[Trace, ...], size: Mark | None) -> Bore:
    unit, new = figure.measured_in, figure.as_new
    band = (new.low, new.high) if new and new.low is not None and new.high is not None else None
    return Bore(
        title=called(figure.name, piece),
        along="down the bore" if figure.wears_up else "along the shaft",
        unit=unit,
        decimals=decimals_for(unit),
        depths=at.depths,
        traces=traces,
        new=band,
        limits=tuple(
            Mark(f"wear limit {show(limit.value, unit)}", limit.value)
            for limit in figure.limits_in_unit
        ),
        next_size=size,
    )


def _traces(kept: Kept, key: str, figure: Figure, at: At, piece: str) -> tuple[Trace, ...]:
    out = []
    for stage in (Stage.FOUND, Stage.FINISHED):
        row = kept.readings.get((key, piece, stage))
        if row is None:
            continue
        values = _in_unit(row, figure.measured_in)
        for number, across in enumerate(at.across):
            own = values[number * len(at.depths) : (number + 1) * len(at.depths)]
            out.append(Trace(f"{stage.value}, {across}", number, stage is Stage.FINISHED, own))
    return tuple(out)


def _in_unit(row: ReadingRow, unit: str) -> tuple[float | None, ...]:
    return tuple(None if each is None else convert(each, row.unit, unit) for each in row.values)


def _next_size(figure: Figure, traces: list[Trace]) -> Mark | None:
    """The size that cleans up the worst place of all pieces as found; None if none is on offer."""
    read = [value for trace in traces if not trace.finished for value in trace.values if value]
    if not figure.sizes or not read:
        return None
    size = next_size(figure, max(read) if figure.wears_up else min(read)).value
    if size is None:
        return None
    return Mark(f"next size {size.shown}: {show(size.finished, size.unit)}", size.finished)
