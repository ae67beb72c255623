"""How much of its wear a part has used up."""

from __future__ import annotations

from shimstock.trade.machine.book import Figure
from shimstock.trade.numbers.working import Working


def keep_wear(w: Working, figure: Figure, now: float, symbol: str) -> float | None:
    """Put the per cent worn into a working where the value stands under `symbol`.

    New is the end of the new range nearest the limit, so that nothing within it is called worn.
    None where the book gives no new range or no limit.
    Source: trade practice for undercarriage: (new − now)/(new − limit)·100.
    """
    new, limit = figure.as_new, figure.allowed
    if new is None or limit is None or not figure.limit:
        return None
    start, end = (new.high, limit.high) if figure.wears_up else (new.low, limit.low)
    if start is None or end is None or start == end:
        return None
    unit = figure.measured_in
    w.extend(Working(source="trade practice for undercarriage (per cent worn)"))
    w.given("new", start, unit, meaning="end of the new range nearest the limit")
    w.given("limit", end, unit, meaning="wear limit")
    share = (start - now) / (start - end) * 100
    return w.step("W", f"(new − {symbol})/(new − limit)·100", share, "%", meaning="worn")
