from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--across '20 in' --angle 28")
def rim_arc(
    *,
    across: Annotated[float, Of("length", above=0)],
    angle: Annotated[float, Of("deg", least=-720, most=720)],
    unit: str = "mm",
) -> Worked[float]:
    """Length along the rim of a flywheel or pulley for so many degrees: where to chalk a mark.

    across: diameter of the rim where the tape lies, in `unit`.
    angle: of the crank, in deg.
    unit: unit of the lengths, mm or in.
    Source: geometry, S = π·D·α/360; valve timing diagram laboratory sheets.

    >>> round(rim_arc(across=508, angle=28).value, 2)
    124.13
    """
    w = Working()
    w.given("D", across, unit, meaning="diameter of the rim")
    w.given("α", angle, "deg", meaning="crank angle")
    arc = pi * across * angle / 360
    w.step("S", "π·D·α/360", arc, unit, meaning="along the rim", answer="arc")
    return Worked(arc, w)
