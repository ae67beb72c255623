from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--displacement '351 in3' --cylinders 2 --stroke '6 3/4 in' --in in")
def bore_for_displacement(
    *,
    displacement: Annotated[float, Of("l", above=0, most=100, found="displacement")],
    cylinders: Annotated[int, Of("", least=1, found="cylinders")],
    stroke: Annotated[float, Of("mm", above=0, most=1000, found="stroke")] | None = None,
    stroke_share: Annotated[float, Of("", above=0)] = 1.0,
) -> Worked[float]:
    """Bore that a swept volume means, as near as the printed volume was rounded.

    Good for telling one size of engine from another; a liner's state is told by a bore gauge.

    displacement: swept volume of all cylinders, in l.
    cylinders: how many there are, a count.
    stroke: travel of the piston, in mm.
    stroke_share: stroke for each unit of bore, where the stroke is not known, no unit.
    Source: geometry, V = π/4·D²·L·z.

    >>> round(bore_for_displacement(displacement=2.0944, cylinders=4).value, 2)
    87.36
    """
    w = Working()
    w.given("V", displacement, "l", meaning="swept volume")
    z = w.given("z", cylinders, "", meaning="cylinders")
    if stroke is not None:
        w.given("L", stroke, "mm", meaning="stroke")
        bore = sqrt(displacement * 1e6 / (z * pi / 4 * stroke))
        formula = "√(V·1000000/(z·π/4·L))"
    else:
        k = w.given("k", stroke_share, "", meaning="stroke for each unit of bore")
        bore = (displacement * 1e6 / (z * pi / 4 * k)) ** (1 / 3)
        formula = "(V·1000000/(z·π/4·k))^(1/3)"
    w.step("D", formula, bore, "mm", meaning="bore", answer="bore")
    return Worked(bore, w)
