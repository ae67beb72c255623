from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between


@a_sum(example="--pressure '80 psi' --displacement '251 in3' --in lbf.ft")
def torque_from_bmep(
    *,
    pressure: Annotated[float, Of("bar", above=0, most=40)],
    displacement: Annotated[float, Of("l", above=0, most=100, found="displacement")],
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Torque at the crankshaft that a brake mean effective pressure gives.

    pressure: brake mean effective pressure, in bar.
    displacement: swept volume of all cylinders, in l.
    cycle: four-stroke or two-stroke, no unit.
    Source: definition, T = p·V/(2·π·i); Rajput, Textbook of Internal Combustion Engines, ex. 17.4.

    >>> round(torque_from_bmep(pressure=9.6, displacement=2.0944).value, 2)
    160.0
    """
    w = Working()
    w.given("p", pressure, "bar", meaning="mean effective pressure")
    w.given("V", displacement, "l", meaning="swept volume")
    i = turns_between(w, cycle)
    torque = 100 * pressure * displacement / (2 * pi * i)
    w.step("T", "100·p·V/(2·π·i)", torque, "N.m", meaning="at the crankshaft", answer="torque")
    return Worked(torque, w)
