"""A verdict in one line, as it stands on the screen, in the terminal and on paper."""

from __future__ import annotations

import re
from functools import lru_cache
from math import floor, log10

from shimstock.trade.machine.book import Figure
from shimstock.trade.machine.words import TOO_MUCH, Verdict
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.percent import percent
from shimstock.trade.numbers.quantity import decimals_for, show

ODD = ": is it the right part, and clean?"


def said(
    figure: Figure, value: float, expanded: float, verdict: Verdict | None, p: float | None
) -> str:
    """The verdict in one line.

    value, expanded: in the figure's unit. p: probability that the true value is within the limit.
    """
    unit, limit = figure.measured_in, figure.allowed
    decimals = decimals_worth(expanded, unit)
    read = show(value, unit, decimals)
    if verdict is None or limit is None:
        return f"{read}: size only, the book gives nothing to judge it by"
    if figure.kind == "setting" or limit.low == limit.high:
        return _setting(figure, read, verdict)
    if verdict is Verdict.WORN_OUT:
        beyond = _beyond(limit, value, decimals)
        return f"{read}: {_worn(figure, limit, value)}, {beyond}"
    if verdict is Verdict.BORDERLINE:
        chance = "" if p is None else f"; the chance that it is within is {percent(p)}"
        give = show(expanded, unit, decimals)
        return f"{read} ± {give}: borderline, {named(limit, value)}{chance}"
    side = _odd_side(figure, value)
    return f"{read}: {verdict}, {side or _worn_towards(figure, limit, value)}"


def word_of(figure: Figure, verdict: Verdict, says: str = "") -> str:
    """The verdict in a word: a setting is never worn, it is out of its setting.

    says: the verdict in one line; of a whole chain's play over its limit, that it is too much in
    all: neither worn, nor borderline, since the gauge can tell.
    """
    if verdict is Verdict.BORDERLINE and TOO_MUCH in says:
        return TOO_MUCH
    if verdict is Verdict.WORN_OUT and figure.kind == "setting":
        return "out of setting"
    return verdict.value


def decimals_worth(expanded: float, unit: str) -> int:
    """How many decimals a value is worth: the last is the first that its ± leaves open.

    expanded: in `unit`, k = 2; without it, as many as the unit deserves.

    >>> decimals_worth(0.00035, "in"), decimals_worth(0.012, "in"), decimals_worth(6, "rpm")
    (4, 2, 0)
    """
    usual = decimals_for(unit)
    if expanded <= 0:
        return usual
    return min(usual + 1, max(0, -floor(log10(expanded))))


def _setting(figure: Figure, read: str, verdict: Verdict) -> str:
    wanted = figure.as_new or figure.allowed
    target = between(wanted) if wanted else ""
    if verdict is Verdict.GOOD:
        return f"{read}: as set, the book says {target}"
    doubt = " as nearly as can be told" if verdict is Verdict.BORDERLINE else ""
    return f"{read}: out of its setting{doubt}; set to {target}"


def _worn(figure: Figure, limit: Range, value: float) -> str:
    """Worn out, or beyond the limit on the side where wear cannot bring it."""
    if figure.wears_up and limit.low is not None and value < limit.low:
        return "too small"
    if not figure.wears_up and limit.high is not None and value > limit.high:
        return "too large"
    return str(Verdict.WORN_OUT)


def _beyond(limit: Range, value: float, decimals: int) -> str:
    unit = limit.unit
    if limit.high is not None and value > limit.high:
        by = show(value - limit.high, unit, decimals)
        return f"{by} over the limit of {as_booked(limit.high, limit)}"
    low = limit.low if limit.low is not None else 0.0
    return f"{show(low - value, unit, decimals)} under the limit of {as_booked(low, limit)}"


def _odd_side(figure: Figure, value: float) -> str:
    """A value that wear cannot explain: tighter, shorter or higher than new."""
    new = figure.as_new
    if new is None or not figure.limit:
        return ""
    if figure.wears_up:
        odd = new.low is not None and value < new.low and not new.holds(value)
        return f"but under the new {between(new)}{ODD}" if odd else ""
    odd = new.high is not None and value > new.high and not new.holds(value)
    return f"but over the new {between(new)}{ODD}" if odd else ""


def _worn_towards(figure: Figure, limit: Range, value: float) -> str:
    """The end of the limit that a worn value is on its way to; else the nearest end."""
    as_built = figure.as_new.high if figure.as_new else None
    worn = figure.wears_up and as_built is not None and value > as_built
    if worn and limit.high is not None:
        return _allowed("at most", limit.high, limit)
    return named(limit, value)


def named(limit: Range, value: float) -> str:
    """The end of the limit that a value comes nearest to.

    >>> named(Range(None, 5.76, "in", ""), 5.7592)
    'at most 5.7600 in is allowed'
    """
    if limit.high is None:
        return _allowed("at least", limit.low or 0.0, limit)
    if limit.low is not None and value - limit.low < limit.high - value:
        return _allowed("at least", limit.low, limit)
    return _allowed("at most", limit.high, limit)


@lru_cache(maxsize=1024)
def _allowed(word: str, end: float, limit: Range) -> str:
    return f"{word} {as_booked(end, limit)} is allowed"


def as_booked(end: float, limit: Range) -> str:
    """One end of a range with the decimals that the book prints, no more.

    >>> as_booked(2.5, Range(1.5, 2.5, "in", "1.5 .. 2.5 in"))
    '2.5 in'
    """
    printed = re.findall(r"\d+(?:[.,](\d+))?", limit.typed)
    if not printed or "/" in limit.typed or limit.unit not in limit.typed.split():
        return show(end, limit.unit)
    return show(end, limit.unit, max(map(len, printed)))


def between(wanted: Range) -> str:
    """A range as a person says it.

    >>> between(Range(580, 620, "rpm", "")), between(Range(0.015, 0.015, "in", ""))
    ('580 to 620 rpm', '0.0150 in')
    """
    ends = [end for end in (wanted.low, wanted.high) if end is not None]
    if len(ends) == 2 and ends[0] != ends[1]:
        low = as_booked(ends[0], wanted).removesuffix(f" {wanted.unit}")
        return f"{low} to {as_booked(ends[1], wanted)}"
    if len(ends) == 2:
        return as_booked(ends[0], wanted)
    word = "at least" if wanted.high is None else "at most"
    return f"{word} {as_booked(ends[0], wanted)}" if ends else "anything"
