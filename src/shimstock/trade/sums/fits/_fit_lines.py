"""What a hole and a shaft make together, from the four limits that stand in a working."""

from dataclasses import dataclass
from typing import Literal

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.fits._apart import apart


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


def fit_lines(w: Working, unit: str) -> Fit:
    """The fit that H_min, H_max, S_min and S_max make; clearance or interference as results."""
    low = apart(w.value("H_min"), w.value("S_max"))
    high = apart(w.value("H_max"), w.value("S_min"))
    made = Fit(Length(low), Length(high), unit)
    loose, some = made.kind == "clearance", made.kind != "interference"
    w.step("c_min", "H_min − S_max", low, unit, answer="least clearance" if loose else "",
           meaning="least clearance")  # fmt: skip
    w.step("c_max", "H_max − S_min", high, unit, answer="most clearance" if some else "",
           meaning="most clearance")  # fmt: skip
    if not loose:
        w.note("A clearance below 0 is interference.")
        w.step("i_max", "|c_min|", abs(low), unit, answer="most interference")
    if not some:
        w.step("i_min", "|c_max|", abs(high), unit, answer="least interference")
    w.tell("kind", made.kind)
    return made
