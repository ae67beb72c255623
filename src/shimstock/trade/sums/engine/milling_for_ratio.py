from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Bore, Ratio, Stroke, clearance_of, swept_of

Wanted = Annotated[float, Of("", above=1, most=100)]


@a_sum(
    example="--bore '4 1/4 in' --stroke '5 1/4 in' --ratio 5.3 --wanted 5.6",
    cautions=(BOOK_FIRST, "Look that valves and piston still clear: turn it by hand with clay."),
)
def milling_for_ratio(
    *, bore: Bore, stroke: Stroke, ratio: Ratio, wanted: Wanted, unit: str = "mm"
) -> Worked[float]:
    """How much to mill off, or how much thicker a gasket must be, for a wanted compression.

    A result below 0 is a gasket so much thicker.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    ratio: compression ratio now, no unit.
    wanted: compression ratio wanted, no unit.
    unit: unit of the lengths, mm or in.
    Source: geometry, t = (V_c − V_s/(r' − 1))/A with the area of the bore.

    >>> round(milling_for_ratio(bore=100, stroke=120, ratio=6, wanted=6.2174).value, 3)
    1.0
    """
    of = coherent(unit)
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit)
    w.given("r'", wanted, "", meaning="compression ratio wanted")
    left = w.step("V_c'", "V_s/(r' − 1)", swept / (wanted - 1), of.volume, meaning="room for it")
    face = w.step("A", "π/4·D²", pi / 4 * bore**2, of.area, meaning="area of the bore")
    cut = (room - left) / face
    w.step("t", "(V_c − V_c')/A", cut, unit, meaning="to come off", answer="cut")
    w.tell("what", "mill so much off" if cut >= 0 else "a gasket so much thicker")
    return Worked(cut, w)
