"""Limits of a part as people write them: 37.50 .. 37.52 mm, 30 +0.020/0 mm, 25 ± 0.01 mm."""

import re
from typing import Annotated

from shimstock.trade.numbers.limits import Range, parse_range
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.sums.declare import Read

EXAMPLES = ("37.50 .. 37.52 mm", "1.2495 in")
_NUMBER = r"\d*\.?\d+"
PLUS_MINUS = re.compile(rf"(?P<basic>{_NUMBER}) ?± ?(?P<off>{_NUMBER}) ?(?P<unit>\D+)", re.ASCII)
DEVIATIONS = re.compile(
    rf"(?P<basic>{_NUMBER}) ?(?P<one>[+-]{_NUMBER}|0) ?/ ?(?P<two>[+-]{_NUMBER}|0) ?(?P<unit>\D+)",
    re.ASCII,
)


def parse_limits(text: str) -> Range:
    """Reads the smallest and largest size of a part, or one size that was measured.

    Raises NotUnderstood.

    >>> parse_limits("30 -0.005/-0.018 mm").low, parse_limits("25 ± 0.01 mm").high
    (29.982, 25.01)
    """
    plain = " ".join(text.replace("−", "-").replace("+/-", "±").split())
    if match := PLUS_MINUS.fullmatch(plain):
        got = _deviated(text, match, f"-{match['off']}", f"+{match['off']}")
    elif match := DEVIATIONS.fullmatch(plain):
        got = _deviated(text, match, match["one"], match["two"])
    else:
        got = parse_range(text)
    unit = find(got.unit)
    if unit is None or unit.kind != "length":
        raise NotUnderstood(text, "is no length", EXAMPLES)
    if got.low is None or got.high is None:
        raise NotUnderstood(text, "leaves one end open; a fit needs both ends", EXAMPLES)
    if got.low <= 0:
        raise NotUnderstood(text, "goes down to nothing; a part has a size above 0", EXAMPLES)
    return got


def _deviated(text: str, match: re.Match[str], one: str, two: str) -> Range:
    """A basic size with its two deviations, in whichever order they stand."""
    found = find(match["unit"])
    if found is None:
        raise NotUnderstood(text, f"ends in {match['unit']}, which is no unit known here", EXAMPLES)
    basic = parse(match["basic"], unit=found.name).value
    ends = sorted(round(basic + float(each), 12) for each in (one, two))
    return Range(ends[0], ends[1], found.name, text)


LimitsText = Annotated[Range, Read(parse_limits, "37.50 .. 37.52 mm")]
