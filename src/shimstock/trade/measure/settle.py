"""What would decide a reading that lies too near its limit."""

from __future__ import annotations

from math import ceil, floor, log10

from shimstock.trade.machine.book import Figure
from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.uncertainty import rectangular, resolution

NICE = (5.0, 3.0, 2.0, 1.0)
MOST_READINGS = 10


def settles(figure: Figure, value: float, u: float, gauge: Instrument | None = None) -> str:
    """What would settle a borderline value as it stands.

    value, u: in the figure's unit; u is the standard uncertainty. gauge: the instrument behind it.
    """
    limit = figure.allowed
    if limit is None:
        return ""
    away = distance(limit, value)
    unit = figure.measured_in
    if away <= 1e-6 * u:
        return "It reads exactly on the limit, and no gauge decides that: measure it afresh"
    several = max(1.0, u / gauge.u(value)) if gauge else 1.0
    wanted = round_down(away / several)
    count = readings_that_settle(gauge, value, away / several) if gauge else None
    or_mean = f", or take the mean of {count} readings at each place" if count else ""
    need = show(away, unit, _decimals(away) + 1)
    return (
        f"Measure again with a gauge good to ±{wanted:.{_decimals(wanted)}f} {unit}{or_mean}: "
        f"as it stands, an expanded uncertainty below {need} would decide it"
    )


def distance(limit: Range, value: float) -> float:
    """How far a value lies from the nearer end of the limit, on either side."""
    return min(abs(value - end) for end in (limit.low, limit.high) if end is not None)


def readings_that_settle(gauge: Instrument, value: float, away: float) -> int | None:
    """How many readings' mean would decide; None where that many would be too many.

    away: distance from the limit, in the gauge's unit. Only what is thrown anew each time, the
    step read, averages out; the gauge's own error does not. Source: JCGM 100:2008, 4.2.3.
    """
    largest = gauge.mpe + gauge.relative * abs(value)
    left = (away / 2) ** 2 - rectangular(largest) ** 2
    if left <= 0:
        return None
    count = max(2, ceil(resolution(gauge.resolution) ** 2 / left * (1 + 1e-9)))
    return count if count <= MOST_READINGS else None


def round_down(x: float) -> float:
    """The next plain figure below: 1, 2, 3 or 5 and zeros.

    >>> round_down(0.00017), round_down(0.4)
    (0.0001, 0.3)
    """
    power = 10.0 ** floor(log10(x))
    lead = next((n for n in NICE if n * power <= x * (1 - 1e-9)), 0.5)
    return float(f"{lead * power:.1g}")


def _decimals(x: float) -> int:
    return max(0, -floor(log10(x) + 1e-9))
