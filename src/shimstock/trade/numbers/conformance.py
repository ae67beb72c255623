"""Is it within the limits? Decisions under uncertainty by JCGM 106:2012 and ISO 14253-1."""

from collections.abc import Callable
from math import erf, erfc, exp, inf, pi, sqrt
from statistics import NormalDist
from typing import Literal, NamedTuple

_STANDARD = NormalDist()
ROOT2 = sqrt(2)
FAR = 10.0  # standard deviations beyond which a normal curve holds nothing that matters

Decision = Literal["conforming", "not conforming", "neither"]


class Risks(NamedTuple):
    """Chances for one part made, measured and judged: wrongly passed, wrongly refused."""

    consumer: float
    producer: float


def within(y: float, u: float, *, low: float | None = None, high: float | None = None) -> float:
    """Probability that the true value lies within the limits when y was read.

    y: reading. u: its standard uncertainty. low, high: limits, all in one unit; None is open.
    Source: JCGM 106:2012, 7.4 (normal distribution about the reading).

    >>> round(within(-5.47, 0.05, high=-5.40), 2)
    0.92
    """
    if u <= 0:
        inside = (low is None or y >= low) and (high is None or y <= high)
        return 1.0 if inside else 0.0
    if high is None:
        return 1.0 if low is None else 0.5 * erfc((low - y) / (u * ROOT2))
    if low is None:
        return 0.5 * erfc((y - high) / (u * ROOT2))
    return 0.5 * (erf((high - y) / (u * ROOT2)) - erf((low - y) / (u * ROOT2)))


def guard_band(u: float, confidence: float) -> float:
    """How far inside a limit a reading must be so that the true value keeps it.

    u: standard uncertainty. confidence: wanted probability, 0.95 is 95 %.
    Source: JCGM 106:2012, 8.3.2; ISO 14253-1:2017 takes 95 %.

    >>> round(guard_band(1, 0.95), 2)
    1.64
    """
    if not 0 < confidence < 1:
        raise ValueError(f"confidence {confidence:g} must lie between 0 and 1; 0.95 is 95 %")
    return _STANDARD.inv_cdf(confidence) * u


def iso14253(y: float, U: float, low: float | None, high: float | None) -> Decision:
    """What a reading proves about the limits.

    y: reading. U: expanded uncertainty. low, high: limits, all in one unit; None is open.
    Between limit − U and limit + U neither side is proven.
    Source: ISO 14253-1, decision rules.

    >>> iso14253(10.03, 0.04, 9.95, 10.05)
    'neither'
    """
    below, above = -inf if low is None else low, inf if high is None else high
    if below + U <= y <= above - U:
        return "conforming"
    if y < below - U or y > above + U:
        return "not conforming"
    return "neither"


def global_risks(
    *,
    middle: float,
    spread: float,
    u: float,
    low: float,
    high: float,
    accept_low: float,
    accept_high: float,
) -> Risks:
    """Risks before anything is measured, where the making scatters normally.

    middle, spread: mean and standard deviation of what is made. u: standard uncertainty of a
    measurement. low, high: tolerance. accept_low, accept_high: what the check lets pass.
    Source: JCGM 106:2012, 9.5.3.
    """
    if spread <= 0 or u <= 0:
        raise ValueError(f"spread {spread:g} and u {u:g} must both be above 0")

    def made(true: float) -> float:
        return exp(-0.5 * ((true - middle) / spread) ** 2) / (spread * sqrt(2 * pi))

    ends = (middle - FAR * spread, middle + FAR * spread)
    return risks_of(made, ends, u, (low, high), (accept_low, accept_high))


def risks_of(
    made: Callable[[float], float],
    ends: tuple[float, float],
    u: float,
    tolerance: tuple[float, float],
    acceptance: tuple[float, float],
) -> Risks:
    """Risks for any density of true values.

    made: density of what is made, between `ends`. u: standard uncertainty of a measurement.
    tolerance, acceptance: low and high, in the unit of the true value.
    Source: JCGM 106:2012, 9.5.2.
    """
    low, high = (min(max(end, ends[0]), ends[1]) for end in tolerance)

    def passed(true: float) -> float:
        return made(true) * within(true, u, low=acceptance[0], high=acceptance[1])

    def refused(true: float) -> float:
        return made(true) - passed(true)

    consumer = _area(passed, ends[0], low) + _area(passed, high, ends[1])
    return Risks(consumer, _area(refused, low, high))


def _area(curve: Callable[[float], float], start: float, end: float) -> float:
    if start >= end:
        return 0.0
    from scipy.integrate import quad

    return float(quad(curve, start, end, epsabs=1e-10, limit=200)[0])
