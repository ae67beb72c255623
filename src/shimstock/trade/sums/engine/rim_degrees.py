from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--across '20 in' --arc '4 7/8 in'")
def rim_degrees(
    *,
    across: Annotated[float, Of("length", above=0)],
    arc: Annotated[float, Of("length")],
    unit: str = "mm",
) -> Worked[float]:
    """Crank degrees that a length along the rim of a flywheel or pulley means.

    across: diameter of the rim where the tape lies, in `unit`.
    arc: length along the rim between two marks, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: geometry, α = 360·S/(π·D); valve timing diagram laboratory sheets.

    >>> round(rim_degrees(across=508, arc=124.13).value, 2)
    28.0
    """
    w = Working()
    w.given("D", across, unit, meaning="diameter of the rim")
    w.given("S", arc, unit, meaning="length along the rim")
    angle = 360 * arc / (pi * across)
    w.step("α", "360·S/(π·D)", angle, "deg", meaning="crank angle", answer="angle")
    return Worked(angle, w)
