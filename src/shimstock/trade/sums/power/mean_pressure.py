from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
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


@a_sum(example="--power '38 hp' --bore '5 3/4 in' --stroke '6 3/4 in' --cylinders 2 "
       "--speed '975 rpm' --in psi")  # fmt: skip
def mean_pressure(
    *,
    power: Annotated[float, Of("kW", above=0)],
    speed: Annotated[float, Of("rpm", above=0, found="rated speed")],
    displacement: Displacement | None = None,
    bore: Bore | None = None,
    stroke: Stroke | None = None,
    cylinders: Cylinders = 1,
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Mean effective pressure of an engine: of brake power the brake's, of indicated the indicated.

    power: brake or indicated power, in kW.
    speed: speed of the crankshaft, in rpm.
    displacement: swept volume of all cylinders, in l.
    bore: bore of a cylinder, where the swept volume is not given, in mm.
    stroke: stroke of the piston, where the swept volume is not given, in mm.
    cylinders: how many there are, a count.
    cycle: four-stroke or two-stroke, no unit.
    Raises NotPossible where the swept volume is given twice or not at all, or above 40 bar.
    Source: definition of the mean effective pressure; Rajput, Textbook of Internal Combustion
    Engines, example 17.46.

    >>> mean_pressure(power=250, displacement=25, speed=2000).value
    6.0
    """
    w = Working()
    w.given("P", power, "kW", meaning="power")
    w.given("n", speed, "rpm", meaning="speed")
    i = turns(w, cycle)
    volume = swept(w, displacement, bore, stroke, cylinders)
    pressure = 600 * i * power / (volume * speed)
    if pressure > 40:
        said = f"mean pressure {written(pressure)} bar"
        raise NotPossible(said, "is more than any engine here has, 40 bar", "look at the units")
    w.step("p_m", "600·i·P/(V·n)", pressure, "bar", meaning="mean effective pressure",
           answer="mean pressure")  # fmt: skip
    return Worked(pressure, w)
