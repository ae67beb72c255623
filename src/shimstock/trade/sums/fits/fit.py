from dataclasses import dataclass
from typing import Literal

from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working


@dataclass(frozen=True)
class Fit:
    """Least and most clearance of a hole over a shaft; below 0 it is interference."""

    least: Length
    most: Length
    unit: str

    @property
    def kind(self) -> Literal["clearance", "interference", "transition"]:
        """Whether the parts always move, always hold, or either."""
        if self.least >= 0:
            return "clearance"
        return "interference" if self.most <= 0 else "transition"


def fit(*, hole: Range, shaft: Range) -> Worked[Fit]:
    """What a hole and a shaft make together, from their limits or from measured sizes.

    hole: smallest and largest size of the hole, in its own unit; the result is in this unit.
    shaft: smallest and largest size of the shaft, in a unit of length.
    Raises ValueError where an end is open or the units are of different kinds.
    Source: plain limit arithmetic, ISO 286-1:2010, 3.3.

    >>> got = fit(hole=Range(37.50, 37.52, "mm", ""), shaft=Range(37.45, 37.47, "mm", "")).value
    >>> round(got.least, 3), round(got.most, 3), got.kind
    (0.03, 0.07, 'clearance')
    """
    unit = hole.unit
    same = shaft if shaft.unit == unit else shaft.convert(unit)
    if hole.low is None or hole.high is None or same.low is None or same.high is None:
        raise ValueError("a fit needs both ends of the hole and of the shaft; one of them is open")
    w = Working(source="plain limit arithmetic, ISO 286-1:2010, 3.3")
    w.given("H_min", hole.low, unit, meaning="smallest hole")
    w.given("H_max", hole.high, unit, meaning="largest hole")
    w.given("S_min", same.low, unit, meaning="smallest shaft")
    w.given("S_max", same.high, unit, meaning="largest shaft")
    least = w.step("c_min", "H_min − S_max", hole.low - same.high, unit, meaning="least clearance")
    most = w.step("c_max", "H_max − S_min", hole.high - same.low, unit, meaning="most clearance")
    if least < 0:
        w.note("A clearance below 0 is interference.")
    return Worked(Fit(Length(least), Length(most), unit), w)
