from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._limits_text import LimitsText


@a_sum(example="--hole '75.000 .. 75.075 mm' --clearance '0.10 mm'")
def shaft_for_hole(
    *,
    hole: LimitsText,
    clearance: Annotated[float, Of("length", least=0)] | None = None,
    interference: Annotated[float, Of("length", least=0)] | None = None,
    tolerance: Annotated[float, Of("length", least=0)] | None = None,
    unit: str = "mm",
) -> Worked[Range]:
    """Limits of the shaft that gives a hole its least clearance, or its least interference.

    hole: smallest and largest size of the hole, or the size measured, with its unit.
    clearance: least clearance that is wanted, in `unit`.
    interference: least interference that is wanted instead, in `unit`.
    tolerance: largest less smallest shaft, in `unit`; that of the hole where nothing is typed.
    unit: unit of the result, mm or in.
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
    unit = coherent(unit).length
    limits = hole if hole.unit == unit else hole.convert(unit)
    if limits.low is None or limits.high is None:
        raise NotPossible(f"the hole, {hole.typed},", "must have both ends", "type both sizes")
    w = Working()
    if hole.unit != unit:
        w.note(f"The hole, {hole.typed}, is taken in {unit}.")
    w.given("H_min", limits.low, unit, meaning="smallest hole")
    w.given("H_max", limits.high, unit, meaning="largest hole")
    own = limits.high - limits.low
    if tolerance is None:
        w.step("T", "H_max − H_min", own, unit, meaning="tolerance of the hole, and the shaft")
    else:
        w.given("T", tolerance, unit, meaning="tolerance of the shaft")
    if clearance is not None:
        return _below(w, clearance, unit)
    return _above(w, interference or 0.0, unit)


def _below(w: Working, clearance: float, unit: str) -> Worked[Range]:
    """The shaft that always moves."""
    low, t = w.value("H_min"), w.value("T")
    w.given("c_min", clearance, unit, meaning="least clearance")
    top = w.step("S_max", "H_min − c_min", low - clearance, unit, answer="largest shaft")
    bottom = w.step("S_min", "S_max − T", top - t, unit, answer="smallest shaft")
    if bottom <= 0:
        rule = f"leaves no shaft in a hole of {low:g} {unit} with a tolerance of {t:g} {unit}"
        raise NotPossible(f"clearance {clearance:g} {unit}", rule, "look at the units")
    return Worked(Range(bottom, top, unit, ""), w)


def _above(w: Working, interference: float, unit: str) -> Worked[Range]:
    """The shaft that always holds."""
    w.given("i_min", interference, unit, meaning="least interference")
    low = w.value("H_max") + interference
    bottom = w.step("S_min", "H_max + i_min", low, unit, answer="smallest shaft")
    top = w.step("S_max", "S_min + T", bottom + w.value("T"), unit, answer="largest shaft")
    return Worked(Range(bottom, top, unit, ""), w)
