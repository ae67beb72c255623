from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.engine._chamber import Bore, Ratio, Stroke, clearance_of, swept_of


@a_sum(
    example="--bore '4 in' --stroke '5 in' --ratio 5.3 --in cc",
    cautions=(BOOK_FIRST,),
)
def clearance_volume(
    *, bore: Bore, stroke: Stroke, ratio: Ratio, unit: str = "mm"
) -> Worked[float]:
    """Room above a piston at its top that a compression ratio means: what an oil glass must give.

    bore: diameter of the cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    ratio: compression ratio, no unit.
    unit: unit of the lengths, mm or in.
    Source: definition of the compression ratio, V_c = V_s/(r − 1).

    >>> round(clearance_volume(bore=75, stroke=100, ratio=5.41786).value)
    100000
    """
    w = Working()
    swept = swept_of(w, bore, stroke, unit)
    room = clearance_of(w, ratio, swept, unit, answer="clearance")
    return Worked(room, w)
