from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Bore, Ratio, Stroke, clearance_of, swept_of


@a_sum(
    example="--bore '4 1/4 in' --stroke '5 1/4 in' --ratio 5.5 --cut '0.030 in'",
    cautions=(BOOK_FIRST, "Look that valves and piston still clear: turn it by hand with clay."),
)
def milling(
    *,
    bore: Bore,
    stroke: Stroke,
    ratio: Ratio,
    cut: Annotated[float, Of("length")],
    area: Annotated[float, Of("area", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Compression ratio after the head or block is milled, or a thinner or thicker gasket put in.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    ratio: compression ratio before, no unit.
    cut: what comes off between head and block, in `unit`; negative for a thicker gasket.
    area: of the chamber in the face that is cut, else that of the bore, in the area of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the cut leaves no room.
    Source: geometry, r' = 1 + V_s/(V_c − A·t).

    >>> round(milling(bore=100, stroke=120, ratio=6, cut=1).value, 4)
    6.2174
    """
    of = coherent(unit)
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit)
    w.given("t", cut, unit, meaning="cut")
    if area is None:
        face = w.step("A", "π/4·D²", pi / 4 * bore**2, of.area, meaning="area of the bore")
    else:
        face = w.given("A", area, of.area, meaning="area of the chamber in the face")
    left = w.step("V_c'", "V_c − A·t", room - face * cut, of.volume, meaning="clearance after")
    if left <= 0:
        rule = "takes all the room above the piston"
        raise NotPossible(f"cut {cut:g} {unit}", rule, "look at its unit")
    after = 1 + swept / left
    w.step("r'", "1 + V_s/V_c'", after, "", meaning="ratio after", answer="ratio")
    return Worked(after, w)
