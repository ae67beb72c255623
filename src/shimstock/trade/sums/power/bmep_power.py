from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._cycle import (
    Bore,
    Cycle,
    Cylinders,
    Displacement,
    Stroke,
    swept,
    turns,
)


@a_sum(example="--pressure '80 psi' --bore '4 1/4 in' --stroke '5 1/4 in' --cylinders 2 "
       "--speed '975 rpm'")  # fmt: skip
def bmep_power(
    *,
    pressure: Annotated[float, Of("bar", above=0, most=40)],
    speed: Annotated[float, Of("rpm", above=0, found="rated speed")],
    displacement: Displacement | None = None,
    bore: Bore | None = None,
    stroke: Stroke | None = None,
    cylinders: Cylinders = 1,
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Power of an engine from its mean effective pressure, swept volume and speed.

    pressure: brake mean effective pressure, in bar.
    speed: speed of the crankshaft, in rpm.
    displacement: swept volume of all cylinders, in l.
    bore: bore of a cylinder, where the swept volume is not given, in mm.
    stroke: stroke of the piston, where the swept volume is not given, in mm.
    cylinders: how many there are, a count.
    cycle: four-stroke or two-stroke, no unit.
    Raises NotPossible where the swept volume is given twice or not at all.
    Source: definition of the mean effective pressure; Rajput, Textbook of Internal Combustion
    Engines, example 17.7.

    >>> bmep_power(pressure=6, displacement=25, speed=2000).value
    250.0
    """
    w = Working()
    w.given("p_m", pressure, "bar", meaning="mean effective pressure")
    w.given("n", speed, "rpm", meaning="speed")
    i = turns(w, cycle)
    volume = swept(w, displacement, bore, stroke, cylinders)
    power = pressure * volume * speed / (600 * i)
    w.step("P", "p_m·V·n/(600·i)", power, "kW", meaning="power", answer="power")
    return Worked(power, w)
