"""What several readings of one bore or journal say: size, taper, out-of-round."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import sqrt

from shimstock.trade.machine.book import Figure
from shimstock.trade.measure.measured import Measured, keep, keep_u, label
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.working import Working

INDEPENDENT = (
    "The two readings are taken as independent, the careful assumption: an error of the gauge "
    "that is the same in both would cancel."
)
TWO_POINT = "trade practice: two-point gauge, differences down the bore and across it"


def largest(figure: Figure, reading: Reading) -> Measured:
    """The largest of the readings, where it was read, and its uncertainty."""
    return at_place(figure, reading, max(reading.taken, key=lambda place: place[1])[0], "largest")


def smallest(figure: Figure, reading: Reading) -> Measured:
    """The smallest of the readings, where it was read, and its uncertainty."""
    return at_place(figure, reading, min(reading.taken, key=lambda place: place[1])[0], "smallest")


def mean(figure: Figure, reading: Reading) -> Measured:
    """The mean of the readings and its uncertainty; the gauge's own error is the same in all."""
    w = Working(source="JCGM 100:2008, 4.2 and F.2.2.1")
    symbols = [f"x_{n}" for n in range(1, len(reading.taken) + 1)]
    for symbol, (at, _) in zip(symbols, reading.taken, strict=True):
        keep(w, symbol, figure, reading, at)
    count = len(symbols)
    middle = sum(value for _, value in reading.taken) / count
    value = w.step("x", f"({' + '.join(symbols)})/{count}", middle, reading.unit, meaning="mean")
    w.given("δ", reading.instrument.resolution, reading.unit, meaning="smallest step read")
    most = reading.instrument.mpe + reading.instrument.relative * abs(value)
    w.given("a", most, reading.unit, meaning=f"largest error of the {reading.instrument.name}")
    u = reading.u(middle, count)
    w.step("u_x", f"√(δ²/(12·{count * reading.each}) + a²/3)", u, reading.unit)
    return Measured(value, w, u, reading.unit, "x", reading.instrument)


def at_place(figure: Figure, reading: Reading, at: int, which: str = "") -> Measured:
    """The reading at one place, and its uncertainty; `which` says why this one is taken."""
    w = Working(source="the reading as typed")
    value = keep(w, "x", figure, reading, at, which if len(reading.taken) > 1 else "")
    u = keep_u(w, "u_x", reading, value)
    return Measured(value, w, u, reading.unit, "x", reading.instrument, label(figure, at))


def taper(figure: Figure, reading: Reading) -> Measured | None:
    """Largest less smallest down one direction, in the worst direction; None if too few readings.

    Source: trade practice for a two-point bore gauge; the same as a service manual's cylindricity.
    """
    rows = _rows(figure, reading, by_depth=False)
    return _difference(figure, reading, rows, "t", "taper: the worst direction")


def out_of_round(figure: Figure, reading: Reading) -> Measured | None:
    """Largest less smallest across one depth, at the worst depth; None if too few readings.

    Source: trade practice for a two-point bore gauge; the same as a service manual's roundness.
    """
    rows = _rows(figure, reading, by_depth=True)
    return _difference(figure, reading, rows, "o", "out-of-round: the worst depth")


def _rows(figure: Figure, reading: Reading, *, by_depth: bool) -> Iterable[list[int]]:
    """Places that are compared with each other, as positions in the reading.

    A plain list of places is one direction down a bore, and equally one depth round it.
    """
    at = figure.at
    if at is None:
        return []
    read = dict(reading.taken)
    if not at.depths:
        return [sorted(read)]
    rows: dict[int, list[int]] = {}
    for n in sorted(read):
        rows.setdefault(n % len(at.depths) if by_depth else n // len(at.depths), []).append(n)
    return rows.values()


def _difference(
    figure: Figure, reading: Reading, rows: Iterable[list[int]], symbol: str, meaning: str
) -> Measured | None:
    values: Mapping[int, float] = dict(reading.taken)
    pairs = [
        (max(row, key=values.__getitem__), min(row, key=values.__getitem__))
        for row in rows
        if len(row) > 1
    ]
    if not pairs:
        return None
    high, low = max(pairs, key=lambda pair: values[pair[0]] - values[pair[1]])
    w = Working(source=TWO_POINT)
    top = keep(w, "d_max", figure, reading, high)
    bottom = keep(w, "d_min", figure, reading, low)
    value = w.step(symbol, "d_max − d_min", top - bottom, reading.unit, meaning=meaning)
    u = keep_u(w, "u_d", reading, top)
    u_both = w.step(f"u_{symbol}", "√(2)·u_d", sqrt(2) * u, reading.unit)
    w.note(INDEPENDENT)
    return Measured(value, w, u_both, reading.unit, symbol, reading.instrument)
