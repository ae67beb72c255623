from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import (
    CLEAR,
    Bore,
    Ratio,
    Stroke,
    Wanted,
    clearance_of,
    swept_of,
)


@a_sum(
    example="--bore '4 in' --stroke '5 in' --ratio 5.6 --wanted 5.3 --gasket '0.050 in'",
    cautions=(BOOK_FIRST, CLEAR),
)
def gasket_for_ratio(
    *,
    bore: Bore,
    stroke: Stroke,
    ratio: Ratio,
    wanted: Wanted,
    gasket: Annotated[float, Of("length", above=0, found="gasket thickness")],
    gasket_bore: Annotated[float, Of("length", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Thickness of head gasket, when tight, that brings a compression ratio to the one wanted.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    ratio: compression ratio with the present gasket, no unit.
    wanted: compression ratio wanted, no unit.
    gasket: thickness of the present gasket when tight, in `unit`.
    gasket_bore: diameter of its hole, else the bore, in `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where even no gasket at all would be too thick.
    Source: geometry, t' = t + (V_c' − V_c)/A with V_c = V_s/(r − 1).

    >>> round(gasket_for_ratio(bore=100, stroke=120, ratio=6.2174, wanted=6, gasket=1).value, 3)
    2.0
    """
    of = coherent(unit)
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit)
    w.given("r'", wanted, "", meaning="compression ratio wanted")
    after = w.step("V_c'", "V_s/(r' − 1)", swept / (wanted - 1), of.volume, meaning="room for it")
    w.given("t", gasket, unit, meaning="present gasket")
    hole = w.given("D_g", bore if gasket_bore is None else gasket_bore, unit, meaning="its hole")
    face = w.step("A", "π/4·D_g²", pi / 4 * hole**2, of.area, meaning="area of its hole")
    new = gasket + (after - room) / face
    w.step("t'", "t + (V_c' − V_c)/A", new, unit, meaning="gasket wanted", answer="gasket")
    if new <= 0:
        rule = f"cannot be reached by a gasket: it would be {new:.4g} {unit} thick"
        raise NotPossible(f"ratio {wanted:g}", rule, "mill the head, or want less")
    return Worked(new, w)
