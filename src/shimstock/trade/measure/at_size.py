"""A bore or journal that has been machined before is held against the size it is at."""

from __future__ import annotations

from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.machining import allowance, usable_within_limit
from shimstock.trade.measure.plausible import nominal_of
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.limits import ON_THE_LINE, Limit, Range
from shimstock.trade.numbers.quantity import convert


def at_size(figure: Figure, reading: Reading, stage: Stage) -> Figure:
    """The figure for the size that a reading belongs to; the figure itself where it is standard.

    As found, a bore at an oversize can nowhere be smaller than it, and so every place must have
    been read; as finished, it may be smaller by no more than the clean-up, since it is finished to
    its piston. A drum, whose limit is one of
    the metal left, keeps its limit whatever it is turned to.
    """
    if not figure.sizes or usable_within_limit(figure):
        return figure
    if stage is Stage.FOUND and None in reading.values:
        return figure
    unit = figure.measured_in
    nominal = nominal_of(figure)
    slack = allowance(figure) if stage is Stage.FINISHED else ON_THE_LINE * nominal
    sizes = [convert(size.value, size.unit, unit) for size in figure.sizes]
    values = [value for _, value in reading.taken]
    if figure.wears_up:
        passed = [size for size in sizes if min(values) >= nominal + size - slack]
    else:
        passed = [size for size in sizes if max(values) <= nominal + size + slack]
    return shifted(figure, max(passed, key=abs)) if passed else figure


def shifted(figure: Figure, by: float) -> Figure:
    """The same figure for an oversize (+) or undersize (−), in its unit."""
    unit = figure.measured_in
    fields = {name: getattr(figure, name) for name in Figure.model_fields}
    if (new := figure.as_new) is not None:
        low, high = (None if end is None else end + by for end in (new.low, new.high))
        fields["new"] = Range(low, high, unit, new.typed)
    fields["limit"] = tuple(
        Limit(each.sense, each.value + by, unit, each.typed) for each in figure.limits_in_unit
    )
    text = f"{by:+.3f}".replace("-", "−")
    fields["name"] = f"{figure.name}, {text} {unit}"
    return Figure(**fields)
