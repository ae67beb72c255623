from math import pi
from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between


@a_sum(example="--torque '205 lbf.ft' --displacement '351 in3' --in psi")
def torque_mean_pressure(
    *,
    torque: Annotated[float, Of("N.m", least=0)],
    displacement: Annotated[float, Of("l", above=0, most=100, found="displacement")],
    cycle: Cycle = "four-stroke",
) -> Worked[float]:
    """Brake mean effective pressure that a torque means, by which engines of unlike size compare.

    torque: at the crankshaft, in N.m.
    displacement: swept volume of all cylinders, in l.
    cycle: four-stroke or two-stroke, no unit.
    Raises NotPossible above 40 bar.
    Source: definition, p = 2·π·i·T/V; Rajput, Textbook of Internal Combustion Engines, ex. 17.46.

    >>> round(torque_mean_pressure(torque=59.2, displacement=1.01788).value, 2)
    7.31
    """
    w = Working()
    w.given("T", torque, "N.m", meaning="torque")
    w.given("V", displacement, "l", meaning="swept volume")
    i = turns_between(w, cycle)
    pressure = 2 * pi * i * torque / displacement / 100
    if pressure > 40:
        said = f"mean pressure {written(pressure)} bar"
        raise NotPossible(said, "is more than any engine here has, 40 bar", "look at the units")
    w.step("p", "2·π·i·T/V/100", pressure, "bar", meaning="mean effective pressure",
           answer="mean pressure")  # fmt: skip
    return Worked(pressure, w)
