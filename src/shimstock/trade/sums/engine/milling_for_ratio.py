from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.engine._chamber import (
    CLEAR,
    Bore,
    Face,
    Ratio,
    Stroke,
    Wanted,
    clearance_of,
    face_of,
    swept_of,
)


@a_sum(
    example="--bore '4 1/4 in' --stroke '5 1/4 in' --ratio 5.3 --wanted 5.6",
    cautions=(BOOK_FIRST, CLEAR),
)
def milling_for_ratio(
    *,
    bore: Bore,
    stroke: Stroke,
    ratio: Ratio,
    wanted: Wanted,
    area: Face | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """How much to mill off, or how much thicker a gasket must be, for a wanted compression.

    A result below 0 is a gasket so much thicker.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    ratio: compression ratio now, no unit.
    wanted: compression ratio wanted, no unit.
    area: of the chamber in the face that is cut, else that of the bore, in the area of `unit`.
    unit: unit of the lengths, mm or in.
    Source: geometry, t = (V_c − V_s/(r' − 1))/A.

    >>> round(milling_for_ratio(bore=100, stroke=120, ratio=6, wanted=6.2174).value, 3)
    1.0
    """
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit)
    w.given("r'", wanted, "", meaning="compression ratio wanted")
    left = w.step("V_c'", "V_s/(r' − 1)", swept / (wanted - 1), coherent(unit).volume,
                  meaning="room for it")  # fmt: skip
    face = face_of(w, bore, area, unit)
    cut = (room - left) / face
    w.step("t", "(V_c − V_c')/A", cut, unit, meaning="to come off", answer="cut")
    w.tell("what", "mill so much off" if cut >= 0 else "a gasket so much thicker")
    return Worked(cut, w)
