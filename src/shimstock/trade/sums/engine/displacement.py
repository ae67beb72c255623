from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Bore, Stroke


@a_sum(example="--bore '4 1/4 in' --stroke '5 1/4 in' --cylinders 2")
def displacement(
    *,
    bore: Bore,
    stroke: Stroke,
    cylinders: Annotated[int, Of("", least=1, found="cylinders")] = 1,
    unit: str = "mm",
) -> Worked[float]:
    """Swept volume of an engine from bore and stroke.

    bore: diameter of one cylinder, in `unit`.
    stroke: travel of the piston, in `unit`.
    cylinders: how many there are, a count.
    unit: unit of the lengths, mm or in.
    Source: geometry, V = π/4·D²·L·z.

    >>> round(displacement(bore=3.25, stroke=3.375, unit="in").value, 3)
    27.998
    """
    volume = coherent(unit).volume
    w = Working()
    w.given("D", bore, unit, meaning="bore")
    w.given("L", stroke, unit, meaning="stroke")
    w.given("z", cylinders, "", meaning="cylinders")
    swept = pi / 4 * bore**2 * stroke * cylinders
    w.step("V", "π/4·D²·L·z", swept, volume, meaning="swept volume", answer="displacement")
    return Worked(swept, w)
