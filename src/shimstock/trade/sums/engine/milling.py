from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import (
    CLEAR,
    Bore,
    Face,
    Ratio,
    Stroke,
    clearance_of,
    face_of,
    swept_of,
)

MOST = 30.0


@a_sum(
    example="--bore '4 1/4 in' --stroke '5 1/4 in' --ratio 5.5 --cut '0.030 in'",
    cautions=(BOOK_FIRST, CLEAR),
)
def milling(
    *,
    bore: Bore,
    stroke: Stroke,
    ratio: Ratio,
    cut: Annotated[float, Of("length")],
    area: Face | None = None,
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
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit)
    w.given("t", cut, unit, meaning="cut")
    face = face_of(w, bore, area, unit)
    left = w.step("V_c'", "V_c − A·t", room - face * cut, coherent(unit).volume,
                  meaning="clearance after")  # fmt: skip
    if left <= 0:
        rule = "takes all the room above the piston"
        raise NotPossible(f"cut {cut:g} {unit}", rule, "look at its unit")
    after = 1 + swept / left
    if after > MOST:
        rule = f"gives a ratio of {after:.1f}, above any engine's {MOST:g}"
        raise NotPossible(f"cut {cut:g} {unit}", rule, "look at its unit")
    w.step("r'", "1 + V_s/V_c'", after, "", meaning="ratio after", answer="ratio")
    return Worked(after, w)
