from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.fits._fit_lines import Fit, fit_lines
from shimstock.trade.sums.fits._limits_text import LimitsText


@a_sum(example="--hole '37.50 .. 37.52 mm' --shaft '37.45 .. 37.47 mm'")
def fit(*, hole: LimitsText, shaft: LimitsText) -> Worked[Fit]:
    """What a hole and a shaft make together, from their limits or from measured sizes.

    The allowance of older books is the least clearance, or the most interference. The result is
    in the unit of the hole.

    hole: smallest and largest size of the hole, or the size measured, with its unit.
    shaft: smallest and largest size of the shaft, or the size measured, with its unit.
    Raises NotPossible where an end is open.
    Source: plain limit arithmetic, ISO 286-1:2010, 3.3.

    >>> from shimstock.trade.sums.fits._limits_text import parse_limits
    >>> got = fit(hole=parse_limits("37.50 .. 37.52 mm"), shaft=parse_limits("37.45 .. 37.47 mm"))
    >>> round(got.value.least, 3), round(got.value.most, 3), got.value.kind
    (0.03, 0.07, 'clearance')
    """
    unit = hole.unit
    w = Working()
    if shaft.unit != unit:
        w.note(f"The shaft, {shaft.typed}, is taken in {unit}.")
    _part(w, "H", "hole", hole)
    _part(w, "S", "shaft", shaft if shaft.unit == unit else shaft.convert(unit))
    return Worked(fit_lines(w, unit), w)


def _part(w: Working, symbol: str, what: str, limits: Range) -> None:
    """Smallest and largest size of one part, and its tolerance where it has one."""
    low, high, unit = limits.low, limits.high, limits.unit
    if low is None or high is None:
        rule = "must have both ends"
        raise NotPossible(f"the {what}, {limits.typed},", rule, "type smallest and largest size")
    w.given(f"{symbol}_min", low, unit, meaning=f"smallest {what}")
    w.given(f"{symbol}_max", high, unit, meaning=f"largest {what}")
    if high > low:
        w.step(f"T_{symbol}", f"{symbol}_max − {symbol}_min", high - low, unit,
               answer=f"{what} tolerance")  # fmt: skip
