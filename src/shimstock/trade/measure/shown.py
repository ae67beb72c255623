"""How a verdict was reached, line by line; put together only when somebody looks."""

from __future__ import annotations

from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.wear import keep_wear
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.working import Working

RULE = "ISO 14253-1 (decision rule); JCGM 106:2012, 7.4 (probability)"
ONE_IN_A_MILLION = 1e-6


def shown_working(
    figure: Figure,
    value: float,
    u: float,
    verdict: Verdict | None,
    p: float | None,
    before: Working | None,
    symbol: str,
) -> Working:
    """The working of one verdict.

    value, u: in the figure's unit. before, symbol: how the value was reached, and where it stands.
    """
    w = Working()
    if before is not None:
        w.extend(before)
    else:
        w.given(symbol, value, figure.measured_in, meaning=figure.name)
    u_name = f"u_{symbol}"
    if not _has(w, u_name):
        w.given(u_name, u, figure.measured_in, meaning="standard uncertainty")
    if figure.allowed is not None:
        _held_against(w, figure.allowed, figure, value, u, p, symbol)
    keep_wear(w, figure, value, symbol)
    w.note(_conclusion(figure, verdict))
    w.extend(Working(source=_source(figure)))
    return w


def _has(w: Working, symbol: str) -> bool:
    try:
        w.value(symbol)
    except KeyError:
        return False
    return True


def _held_against(
    w: Working, limit: Range, figure: Figure, value: float, u: float, p: float | None, symbol: str
) -> None:
    unit = figure.measured_in
    w.step("U", f"2·u_{symbol}", 2 * u, unit, meaning="expanded uncertainty, k = 2")
    whose = "stand-in figure" if figure.stand_in else f"book page {figure.page}"
    if limit.low is not None:
        w.given("L_min", limit.low, unit, meaning=f"smallest allowed, {whose}")
        _margin(w, "m_min", (symbol, value), ("L_min", limit.low), unit)
    if limit.high is not None:
        w.given("L_max", limit.high, unit, meaning=f"largest allowed, {whose}")
        _margin(w, "m_max", ("L_max", limit.high), (symbol, value), unit)
    if p is not None and u > 0:
        _chance(w, limit, symbol, p)


def _margin(
    w: Working, name: str, upper: tuple[str, float], lower: tuple[str, float], unit: str
) -> None:
    """How far a value lies inside one end of the limit, or outside it; never below 0."""
    by = upper[1] - lower[1]
    if by < 0:
        upper, lower = lower, upper
    formula = f"{upper[0]} − {lower[0]}"
    w.step(name, formula, abs(by), unit, meaning="outside by" if by < 0 else "inside by")


def _chance(w: Working, limit: Range, symbol: str, p: float) -> None:
    if p < ONE_IN_A_MILLION:
        w.note("The chance that the true value is within the limit is under one in a million.")
        return
    if p > 1 - ONE_IN_A_MILLION:
        w.note("The chance that the true value is within the limit is over 99.99 %.")
        return
    above = f"Φ((L_max − {symbol})/u_{symbol})"
    below = f"Φ((L_min − {symbol})/u_{symbol})"
    if limit.low is None:
        formula = above
    elif limit.high is None:
        formula = f"1 − {below}"
    else:
        formula = f"{above} − {below}"
    w.step("p", formula, p, "", meaning="probability that the true value is within the limit")


def _conclusion(figure: Figure, verdict: Verdict | None) -> str:
    setting = figure.kind == "setting"
    match verdict:
        case None:
            return "The book gives nothing to judge this by: only the size is known."
        case Verdict.BORDERLINE:
            return "Nearer to the limit than U, on either side: neither is proven, so borderline."
        case Verdict.WORN_OUT if setting:
            return "Outside by more than U: out of its setting."
        case Verdict.WORN_OUT:
            return "Outside the limit by more than U: proven to be beyond it."
        case Verdict.GOOD if setting:
            return "Within its setting, as nearly as the gauge can tell."
        case Verdict.GOOD:
            return "Within the new range, and not doubtful at a wear limit: good."
    return "Within the limit, but not within the new range: serviceable."


def _source(figure: Figure) -> str:
    whose = "stand-in figure" if figure.stand_in else f"maker's book, page {figure.page}"
    return f"{RULE}; {whose}"
