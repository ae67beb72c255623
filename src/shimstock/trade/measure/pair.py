"""Whether the several of a kind are near enough to each other to work together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.judge import Judged, judge
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.words import decimals_worth
from shimstock.trade.numbers.limits import Limit, Range
from shimstock.trade.numbers.percent import percent
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.uncertainty import Component, combine, of_difference
from shimstock.trade.numbers.working import Working

TOGETHER = "together"
"""Stands for all pieces at once, where a verdict is on how far they differ."""


def compare(figure_key: str, figure: Figure, several: Mapping[str, Measured]) -> Judged | None:
    """Judge how far the pieces differ; None without a pair limit, or with fewer than two read.

    Nor is there a share of each other where the largest is nothing, such as two dead pumps.

    several: by piece, in the figure's unit. The limit is in a unit of the figure, or in per cent:
    at most so much of the largest, or the lowest at least so much of the highest.
    Source: JCGM 100:2008, 5.1.2, for the uncertainty of a difference and of a quotient.
    """
    if figure.pair is None or len(several) < 2:
        return None
    limit = figure.pair if figure.pair.unit == "%" else figure.pair.convert(figure.measured_in)
    high = max(several, key=lambda piece: several[piece].value)
    low = min(several, key=lambda piece: several[piece].value)
    if limit.unit == "%" and several[high].value <= 0:
        return None
    w = Working(source="JCGM 100:2008, 5.1.2")
    for symbol, piece in (("a", high), ("b", low)):
        w.given(symbol, several[piece].value, figure.measured_in, meaning=piece)
        w.given(f"u_{symbol}", several[piece].u, figure.measured_in)
    value, u = _apart(w, limit, several[high], several[low], figure.measured_in)
    alike = _alike(figure, limit)
    judged = judge(
        figure_key,
        alike,
        value,
        u,
        piece=TOGETHER,
        working=w,
        symbol="D",
        gauge=several[high].gauge,
    )
    return replace(judged, says=_says(figure, limit, judged), settles=_settles(judged))


def _apart(w: Working, limit: Limit, a: Measured, b: Measured, unit: str) -> tuple[float, float]:
    """How far the largest and the smallest differ, in the way that the limit counts."""
    if limit.unit != "%":
        value = w.step("D", "a − b", a.value - b.value, unit, meaning="largest less smallest")
        return value, w.step("u_D", "√(u_a² + u_b²)", of_difference(a.u, b.u), unit)
    parts = (Component("b", 1 / a.value, b.u), Component("a", b.value / a.value**2, a.u))
    share = combine(parts).u * 100
    if limit.sense == "min":
        value = w.step("D", "b/a·100", b.value / a.value * 100, "%", meaning="lowest of highest")
    else:
        apart = (a.value - b.value) / a.value * 100
        value = w.step("D", "(a − b)/a·100", apart, "%", meaning="difference, of the largest")
    return value, w.step("u_D", "√((u_b/a)² + (b·u_a/a²)²)·100", share, "%")


def _alike(figure: Figure, limit: Limit) -> Figure:
    """The pair limit as a figure of its own: within it, the several are alike."""
    low, high = (None, limit.value) if limit.sense == "max" else (limit.value, None)
    return Figure(
        name=f"{figure.name}, compared",
        of=figure.of,
        new=Range(low, high, limit.unit, limit.typed),
        limit=(limit,),
        if_outside=figure.if_outside,
        page=figure.page,
    )


def _says(figure: Figure, limit: Limit, judged: Judged) -> str:
    share = limit.unit == "%"
    decimals = 1 if share else decimals_worth(judged.expanded, limit.unit)
    read = show(judged.value, limit.unit, decimals)
    if share and limit.sense == "min":
        how = f"lowest is {read} of the highest"
    else:
        how = f"differ by {read}{' of the largest' if share else ''}"
    word = "at most" if limit.sense == "max" else "at least"
    allowed = f"{word} {show(limit.value, limit.unit)} is allowed"
    if judged.verdict is Verdict.BORDERLINE and judged.p_within is not None:
        chance = percent(judged.p_within)
        return f"{how}: borderline, {allowed}; the chance that they are near enough is {chance}"
    if judged.verdict is Verdict.GOOD:
        return f"{how}: near enough, {allowed}"
    verdict = "too far apart" if figure.kind == "setting" else "not a pair"
    return f"{how}: {verdict}, {allowed}"


def _settles(judged: Judged) -> str:
    if judged.verdict is not Verdict.BORDERLINE:
        return ""
    each = "Read each again, with a surer gauge"
    return each if judged.unit == "%" else f"{each}. {judged.settles}"
