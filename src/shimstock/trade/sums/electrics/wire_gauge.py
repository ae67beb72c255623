from math import ceil, floor, pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import (
    THICKEST,
    THINNEST,
    Area,
    named,
    nearest_gauge,
)


@a_sum(example="--area '70 mm2'")
def wire_gauge(
    *,
    diameter: Annotated[float, Of("mm", above=0)] | None = None,
    area: Area | None = None,
) -> Worked[float]:
    """American wire gauge of a wire that was measured, or of a metric cable.

    diameter: of one solid wire, without its insulation, in mm.
    area: of the copper, for a stranded cable: strands times the area of one, in mm2.
    Raises NotPossible where not exactly one is given, or the wire lies beyond 4/0 or 40.
    Source: American wire gauge, d = 0.005·92^((36 − n)/39) in, solved for n.

    >>> wire_gauge(area=67.4).working.answers["nearest gauge"].value
    '2/0'
    """
    if (diameter is None) == (area is None):
        raise NotPossible("the wire", "must be given by diameter or by area", "give one of the two")
    w = Working()
    if area is not None:
        w.given("A", area, "mm2", meaning="copper area")
        across = w.step("d", "√(4·A/π)", sqrt(4 * area / pi), "mm", meaning="as one solid wire")
    else:
        across = w.given("d", diameter or 0, "mm", meaning="diameter")
    number = nearest_gauge(across / 25.4)
    if not THICKEST - 0.5 <= number <= THINNEST + 0.5:
        rule = "lies beyond the gauges from 4/0 to 40"
        raise NotPossible(f"a wire of {across:.4g} mm", rule, "name it by its area in mm2")
    w.step("n", "36 − 39·ln(d/0.127)/ln(92)", number, "", meaning="gauge as a number",
           answer="number")  # fmt: skip
    w.tell("nearest gauge", named(min(max(round(number), THICKEST), THINNEST)))
    if floor(number) >= THICKEST and ceil(number) <= THINNEST:
        w.note(f"It lies between gauge {named(floor(number))} and {named(ceil(number))}.")
    return Worked(number, w)
