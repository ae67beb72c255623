from typing import Annotated

from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._limits_text import LimitsText


@a_sum(example="--hole '75.000 .. 75.075 mm' --clearance '0.10 mm'")
def shaft_for_hole(
    *,
    hole: LimitsText,
    clearance: Annotated[float, Of("mm", least=0)] | None = None,
    interference: Annotated[float, Of("mm", least=0)] | None = None,
    tolerance: Annotated[float, Of("mm", least=0)] | None = None,
) -> Worked[Range]:
    """Limits of the shaft that gives a hole its least clearance, or its least interference.

    hole: smallest and largest size of the hole, or the size measured, with its unit.
    clearance: least clearance that is wanted, in mm.
    interference: least interference that is wanted instead, in mm.
    tolerance: largest less smallest shaft, in mm; that of the hole where nothing is typed.
    Raises NotPossible where not exactly one of clearance and interference is given, or no shaft
    is left.
    Source: plain limit arithmetic, as P. C. Sharma, Production Engineering, examples 9.2 and 9.3.

    >>> from shimstock.trade.sums.fits._limits_text import parse_limits
    >>> got = shaft_for_hole(hole=parse_limits("75.000 .. 75.075 mm"), clearance=0.1).value
    >>> round(got.low, 3), round(got.high, 3)
    (74.825, 74.9)
    """
    if (clearance is None) == (interference is None):
        raise NotPossible("the fit", "is said by one of clearance and interference", "give one")
    limits = hole if hole.unit == "mm" else hole.convert("mm")
    if limits.low is None or limits.high is None:
        raise NotPossible(f"the hole, {hole.typed},", "must have both ends", "type both sizes")
    w = Working()
    if hole.unit != "mm":
        w.note(f"The hole, {hole.typed}, is taken in mm.")
    low = w.given("H_min", limits.low, "mm", meaning="smallest hole")
    high = w.given("H_max", limits.high, "mm", meaning="largest hole")
    own = high - low
    if tolerance is None:
        t = w.step("T", "H_max − H_min", own, "mm", meaning="tolerance of the hole, and the shaft")
    else:
        t = w.given("T", tolerance, "mm", meaning="tolerance of the shaft")
    if clearance is not None:
        return _below(w, low, clearance, t)
    return _above(w, high, interference or 0.0, t)


def _below(w: Working, low: float, clearance: float, t: float) -> Worked[Range]:
    """The shaft that always moves."""
    w.given("c_min", clearance, "mm", meaning="least clearance")
    top = w.step("S_max", "H_min − c_min", low - clearance, "mm", answer="largest shaft")
    bottom = w.step("S_min", "S_max − T", top - t, "mm", answer="smallest shaft")
    if bottom <= 0:
        rule = f"leaves no shaft in a hole of {low:g} mm with a tolerance of {t:g} mm"
        raise NotPossible(f"clearance {clearance:g} mm", rule, "look at the units")
    return Worked(Range(bottom, top, "mm", ""), w)


def _above(w: Working, high: float, interference: float, t: float) -> Worked[Range]:
    """The shaft that always holds."""
    w.given("i_min", interference, "mm", meaning="least interference")
    bottom = w.step("S_min", "H_max + i_min", high + interference, "mm", answer="smallest shaft")
    top = w.step("S_max", "S_min + T", bottom + t, "mm", answer="largest shaft")
    return Worked(Range(bottom, top, "mm", ""), w)
