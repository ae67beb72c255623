"""What a reading means when it is held against the book's figure."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Self

from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.settle import settles
from shimstock.trade.measure.shown import shown_working
from shimstock.trade.measure.words import said
from shimstock.trade.numbers.conformance import iso14253, within
from shimstock.trade.numbers.instruments import Instrument
from shimstock.trade.numbers.limits import ON_THE_LINE, Range
from shimstock.trade.numbers.working import Working


@dataclass(frozen=True)
class Judged:
    """A verdict, what it rests on and what would settle it.

    verdict: None where the book gives nothing to judge by, so that only the size is known.
    expanded: the value's uncertainty, k = 2. p_within: probability that the true value is within
    the limit; None where there is no limit, or a setting is one exact value.
    beyond: the limit is proven passed. remedy: what the book says to do.
    stand_in: held against a stand-in figure, not the maker's.
    """

    figure: str
    piece: str
    verdict: Verdict | None
    value: float
    unit: str
    expanded: float
    p_within: float | None
    says: str
    settles: str
    remedy: str
    beyond: bool
    stand_in: bool
    how: Callable[[], Working] = field(compare=False, repr=False)

    @cached_property
    def working(self) -> Working:
        """How the value, its uncertainty and the verdict were reached."""
        return self.how()

    def as_data(self) -> dict[str, Any]:
        """Plain values for JSON; `from_data` reads them back."""
        kept = {name: getattr(self, name) for name in _PLAIN}
        verdict = self.verdict.value if self.verdict else None
        return {**kept, "verdict": verdict, "working": self.working.as_data()}

    @classmethod
    def from_data(cls, data: Mapping[str, Any]) -> Self:
        """The verdict that `as_data` wrote, with the working as it was shown then."""
        working = Working.from_data(data["working"])
        verdict = Verdict(data["verdict"]) if data["verdict"] else None
        kept = {name: data[name] for name in _PLAIN}
        return cls(**kept, verdict=verdict, how=lambda: working)


_PLAIN = (
    *("figure", "piece", "value", "unit", "expanded", "p_within", "says", "settles", "remedy"),
    *("beyond", "stand_in"),
)


def judge(
    figure_key: str,
    figure: Figure,
    value: float,
    u: float,
    *,
    piece: str = "",
    working: Working | None = None,
    symbol: str = "x",
    gauge: Instrument | None = None,
) -> Judged:
    """Judge a value against the book's figure, by the rule of `verdict_on`.

    value, u: in the figure's unit; u is the standard uncertainty. working, symbol: how the value
    was reached, and where it stands there. gauge: the instrument behind it.
    Source: ISO 14253-1 (the rule of `verdict_on`); JCGM 106:2012, 7.4 (probability).
    """
    expanded = 2 * u
    verdict = verdict_on(figure, value, expanded)
    limit = figure.allowed
    p = None
    if limit is not None and limit.low != limit.high:
        p = within(value, u, low=limit.low, high=limit.high)
    doubtful = verdict is Verdict.BORDERLINE
    return Judged(
        figure=figure_key,
        piece=piece,
        verdict=verdict,
        value=value,
        unit=figure.measured_in,
        expanded=expanded,
        p_within=p,
        says=said(figure, value, expanded, verdict, p),
        settles=settles(figure, value, u, gauge) if doubtful else "",
        remedy=(figure.if_outside or "") if verdict is Verdict.WORN_OUT else "",
        beyond=verdict is Verdict.WORN_OUT,
        stand_in=figure.stand_in,
        how=lambda: shown_working(figure, value, u, verdict, p, working, symbol),
    )


def verdict_on(figure: Figure, value: float, expanded: float) -> Verdict | None:
    """The verdict on a value; None where the book gives nothing to judge by.

    The rule, with U the expanded uncertainty: beyond the limit by more than U is worn out, for
    that is proven; within U of the limit, on either side, is borderline, since neither side is
    proven; otherwise within the new range is good and within the limit is serviceable.

    Where no wear is allowed for, the reading is taken as it is (simple acceptance): a setting, and
    that side of a figure whose limit is the end of its new range. There only a value outside, by
    no more than U, is borderline; a setting narrower than 2·U is met as nearly as the gauge can
    tell.

    value: in the figure's unit. expanded: U, k = 2, in the same unit.
    Source: ISO 14253-1 (decision rule); JCGM 106:2012, 8.2 (simple acceptance).
    """
    limit, new = figure.allowed, figure.as_new
    if limit is None:
        return None
    if figure.kind == "setting" or limit.low == limit.high:
        return _setting(limit, new, value, expanded)
    reach = expanded + ON_THE_LINE * abs(value)
    if iso14253(value, reach, limit.low, limit.high) == "not conforming":
        return Verdict.WORN_OUT
    outside = iso14253(value, reach - expanded, limit.low, limit.high) == "not conforming"
    if expanded > 0 and (outside or iso14253(value, reach, *_wear_ends(limit, new)) == "neither"):
        return Verdict.BORDERLINE
    return _within(new, value)


def _within(new: Range | None, value: float) -> Verdict:
    return Verdict.GOOD if new is not None and new.holds(value) else Verdict.SERVICEABLE


def _wear_ends(limit: Range, new: Range | None) -> tuple[float | None, float | None]:
    """The ends of the limit that leave something to wear: not the end of the new range itself."""
    if new is None:
        return limit.low, limit.high
    low = None if new.low == limit.low else limit.low
    return low, None if new.high == limit.high else limit.high


def _setting(limit: Range, new: Range | None, value: float, expanded: float) -> Verdict:
    reach = expanded + ON_THE_LINE * abs(value)
    met = new or limit
    narrow = met.low is not None and met.high is not None and met.high - met.low < 2 * expanded
    missed = iso14253(value, reach, met.low, met.high) == "not conforming"
    if met.holds(value) or (narrow and not missed):
        return Verdict.GOOD
    if limit.holds(value):
        return Verdict.SERVICEABLE
    beyond = iso14253(value, reach, limit.low, limit.high) == "not conforming"
    return Verdict.WORN_OUT if beyond else Verdict.BORDERLINE


def margin(limit: Range, value: float) -> float:
    """How far inside the nearer end of the limit a value lies; below 0 outside it."""
    if limit.high is None:
        return value - limit.low if limit.low is not None else float("inf")
    above = limit.high - value
    return above if limit.low is None else min(above, value - limit.low)
