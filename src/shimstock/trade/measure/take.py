"""Taking a reading: every number understood once, and a slipped digit caught on the way in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from statistics import median

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.named import with_article
from shimstock.trade.measure.plausible import limit_band, plausible
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.instruments import Instrument, named
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
from shimstock.trade.numbers.quantity import convert, parse, show
from shimstock.trade.numbers.slips import Slip, slips
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.numbers.unit_names import find

GAPS = frozenset({"-", "–", "—", "−"})
"""What a person types for a place that was not read."""


OTHERS, FAR, APART = 3, 3, 4
"""A value is far from at least so many others, by so many times the figures' span and theirs."""

INTO_A_GAP = ("feeler", "crushable", "gauge strip", "dial")
"""What reads a clearance directly, as a book names it; the first where it names none of them."""


class SlippedDigit(HardlyMeant):
    """A reading that its figure can hardly have, with what was likely meant."""

    def __init__(self, typed: str, wrong: str, likely: tuple[Slip, ...], unit: str) -> None:
        self.likely = likely
        self.unit = unit
        super().__init__(typed, wrong, tuple(show(slip.value, unit) for slip in likely))

    def __reduce__(self) -> tuple[type, tuple[object, ...]]:  # type: ignore[override]
        return (SlippedDigit, (self.typed, self.wrong, self.likely, self.unit))


def understand(
    figure_key: str,
    figure: Figure,
    typed: Sequence[str],
    *,
    instrument: Instrument | None = None,
    meant: bool = False,
    near: float | None = None,
    each: int = 1,
) -> Reading:
    """Understand what was typed for a figure; a bare number takes the figure's unit.

    typed: one text for each place of the figure, "-" for a place not read.
    instrument: what it was read with; without one, the instrument that the book names.
    meant: keeps a value outside the plausible range. near: the value expected, in the figure's
    unit, such as the median of other readings of it; it puts the likeliest slip first.
    each: how many readings every number is the mean of.
    Raises NotUnderstood for a wrong number of readings or text that cannot be read, and
    SlippedDigit for a value that the figure can hardly have, or that stands far from the others.
    """
    _as_many_as_wanted(figure, typed)
    unit = figure.measured_in
    values = tuple(_value(figure, text) for text in typed)
    if all(value is None for value in values):
        raise NotUnderstood(" ".join(typed), "holds no reading at all", ("at least one number",))
    bounds = None if meant else plausible(figure)
    if bounds is not None:
        _refuse_slips(figure, typed, values, bounds, near)
        _refuse_strays(figure, typed, values, bounds)
    gauge = in_unit(instrument, unit) if instrument else _by_the_book(figure, typed)
    return Reading(figure_key, tuple(typed), values, unit, gauge, meant, each)


def check_plausible(
    figure: Figure, typed: str, value: float, *, near: float | None = None, place: str = ""
) -> None:
    """Refuse a value, in the figure's unit, that the figure can hardly have.

    near: the value expected. place: where it was read, for the message. What is not known to be
    impossible passes. Raises SlippedDigit.
    """
    bounds, unit = plausible(figure), figure.measured_in
    if bounds is None or bounds.low is None or bounds.high is None or bounds.holds(value):
        return
    band = limit_band(figure)
    likely = slips(value, unit, bounds.low, bounds.high, typed=typed, near=near, band=band)
    wrong = (
        f"{f'at {place} ' if place else ''}lies outside {show(bounds.low, unit)} to "
        f"{show(bounds.high, unit)}, which {with_article(figure.name)} can hardly leave: "
        "a slipped digit? If it is meant, say so"
    )
    raise SlippedDigit(typed, wrong, tuple(likely), unit)


def in_unit(instrument: Instrument, unit: str) -> Instrument:
    """The same instrument, its resolution and error told in another unit."""
    if instrument.unit == unit:
        return instrument
    scale = convert(1, instrument.unit, unit) - convert(0, instrument.unit, unit)
    return replace(
        instrument,
        resolution=instrument.resolution * scale,
        mpe=instrument.mpe * scale,
        unit=unit,
    )


def _as_many_as_wanted(figure: Figure, typed: Sequence[str]) -> None:
    labels = figure.at.labels if figure.at else ()
    wanted = len(labels) or 1
    repeats = not labels and figure.judge == "mean"
    if len(typed) == wanted or (repeats and typed):
        return
    shown = " ".join(typed)
    places = f": {', '.join(labels)}" if labels else ""
    made = f"{len(typed) or 'no'} reading{'' if len(typed) == 1 else 's'}"
    wrong = f"makes {made}; {figure.name} wants {wanted}{places}"
    raise NotUnderstood(shown, wrong, ('"-" for a place not read',) if labels else ())


def _value(figure: Figure, text: str) -> float | None:
    if text.strip() in GAPS:
        return None
    return parse(text, unit=figure.measured_in, what=figure.name).value


def _refuse_slips(
    figure: Figure,
    typed: Sequence[str],
    values: Sequence[float | None],
    bounds: Range,
    near: float | None,
) -> None:
    read = [value for value in values if value is not None and bounds.holds(value)]
    aim = near if near is not None else (median(read) if read else None)
    for at, (text, value) in enumerate(zip(typed, values, strict=True)):
        if value is not None:
            place = figure.at.labels[at] if figure.at else ""
            check_plausible(figure, text, value, near=aim, place=place)


def _refuse_strays(
    figure: Figure, typed: Sequence[str], values: Sequence[float | None], bounds: Range
) -> None:
    """Refuse a value far from those at the other places where two digits changed bring it back.

    Far is farther than the book's figures span three times over, and than the others lie apart
    four times over. Source: common practice, no source.
    """
    band, unit = limit_band(figure), figure.measured_in
    if figure.at is None or band is None or bounds.low is None or bounds.high is None:
        return
    for at, (text, value) in enumerate(zip(typed, values, strict=True)):
        others = [each for place, each in enumerate(values) if place != at and each is not None]
        if value is None or len(others) < OTHERS:
            continue
        low, high = min(others), max(others)
        if abs(value - median(others)) <= max(FAR * band, APART * (high - low)):
            continue
        likely = slips(
            value, unit, low - band, high + band, typed=text, near=median(others), band=band
        )
        if likely:
            wrong = (
                f"at {figure.at.labels[at]} is far from the others, {show(low, unit)} to "
                f"{show(high, unit)}: a slipped digit? If it is meant, say so"
            )
            raise SlippedDigit(text, wrong, tuple(likely), unit)


def _by_the_book(figure: Figure, typed: Sequence[str]) -> Instrument:
    """The instrument that the book names; else one that can just tell the last digit typed.

    For a clearance the book may name what its two sides are measured with. Where the gap itself was
    read, that was done with something that reads a gap.
    """
    unit = figure.measured_in
    if figure.derive is not None and figure.derive.hole:
        said = (figure.with_ or "").casefold()
        return named(next((word for word in INTO_A_GAP if word in said), INTO_A_GAP[0]), unit)
    try:
        return named(figure.with_ or "", unit)
    except NotUnderstood:
        step = max(_last_digit(text, unit) for text in typed if text.strip() not in GAPS)
        source = "no instrument known: taken as good to the last digit typed"
        return Instrument("instrument not named", step, step, unit, 0.0, source)


def _last_digit(text: str, unit: str) -> float:
    """What one step of the last digit typed is worth; a fraction is read to a sixty-fourth."""
    number, spelled = split_number(tidy(text))
    said = find(spelled)
    have = said.name if said else unit
    decimals = len(number.replace(",", ".").partition(".")[2])
    step = 1 / 64 if "/" in number else 10.0**-decimals
    return convert(step, have, unit) - convert(0, have, unit)
