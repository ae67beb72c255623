"""Swept volume and working strokes of an engine."""

from math import pi
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Cycle = Literal["four-stroke", "two-stroke"]
Displacement = Annotated[float, Of("l", above=0, most=100, found="displacement")]
Bore = Annotated[float, Of("mm", above=0, most=1000, found="bore")]
Stroke = Annotated[float, Of("mm", above=0, most=1000, found="stroke")]
Cylinders = Annotated[int, Of("", least=1, found="cylinders")]


def turns(w: Working, cycle: Cycle) -> int:
    """Turns of the crank for each working stroke, kept as i."""
    i = 2 if cycle == "four-stroke" else 1
    w.given("i", i, "", meaning=f"turns for each working stroke, {cycle}")
    return i


def swept(
    w: Working,
    displacement: float | None,
    bore: float | None,
    stroke: float | None,
    cylinders: int,
) -> float:
    """The swept volume in litres, kept as V, as given or from bore and stroke.

    Raises NotPossible where neither or both are given.
    """
    if displacement is not None:
        if bore is not None or stroke is not None:
            rule = "are each enough alone"
            raise NotPossible("displacement, and bore with stroke,", rule, "leave one out")
        return w.given("V", displacement, "l", meaning="swept volume")
    if bore is None or stroke is None:
        rule = "is needed, or bore and stroke together"
        raise NotPossible("displacement", rule, "give one or the other")
    w.given("D", bore, "mm", meaning="bore")
    w.given("L", stroke, "mm", meaning="stroke")
    w.given("z", cylinders, "", meaning="cylinders")
    volume = pi / 4 * bore**2 * stroke * cylinders / 1e6
    return w.step("V", "π/4·D²·L·z/1000000", volume, "l", meaning="swept volume")
