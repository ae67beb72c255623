"""The room above the piston at its top."""

from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Bore = Annotated[float, Of("length", above=0, most=1000, found="bore")]
Stroke = Annotated[float, Of("length", above=0, most=1000, found="stroke")]
Face = Annotated[float, Of("area", above=0)]
Ratio = Annotated[float, Of("", above=1, most=100, found="compression ratio")]
Wanted = Annotated[float, Of("", above=1, most=100)]
CLEAR = "Look that valves and piston still clear: turn the engine by hand with clay on the piston."


def swept_of(w: Working, bore: float, stroke: float, unit: str) -> float:
    """Swept volume of one cylinder, kept as V_s."""
    w.given("D", bore, unit, meaning="bore")
    w.given("L", stroke, unit, meaning="stroke")
    volume = pi / 4 * bore**2 * stroke
    return w.step("V_s", "π/4·D²·L", volume, coherent(unit).volume, meaning="swept volume")


def clearance_of(w: Working, ratio: float, swept: float, unit: str, answer: str = "") -> float:
    """Clearance volume that a compression ratio means, kept as V_c; V_s already stands there."""
    w.given("r", ratio, "", meaning="compression ratio")
    volume = swept / (ratio - 1)
    return w.step("V_c", "V_s/(r − 1)", volume, coherent(unit).volume, meaning="clearance volume",
                  answer=answer)  # fmt: skip


def face_of(w: Working, bore: float, area: float | None, unit: str) -> float:
    """Area of the chamber where head and block meet, kept as A: as typed, else the bore's."""
    of = coherent(unit).area
    if area is not None:
        return w.given("A", area, of, meaning="area of the chamber in the face")
    return w.step("A", "π/4·D²", pi / 4 * bore**2, of, meaning="area of the bore")
