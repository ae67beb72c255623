from math import pi
from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--torque '205 lbf.ft' --displacement '351 in3' --in psi")
def torque_mean_pressure(
    *,
    torque: Annotated[float, Of("N.m", least=0)],
    displacement: Annotated[float, Of("l", above=0, found="displacement")],
    cycle: Literal["four-stroke", "two-stroke"] = "four-stroke",
) -> Worked[float]:
    """Brake mean effective pressure that a torque means, by which engines of unlike size compare.

    torque: at the crankshaft, in N.m.
    displacement: swept volume of all cylinders, in l.
    cycle: four-stroke or two-stroke, no unit.
    Source: definition, p = 2·π·i·T/V; Rajput, Textbook of Internal Combustion Engines, ex. 17.46.

    >>> round(torque_mean_pressure(torque=59.2, displacement=1.01788).value, 2)
    7.31
    """
    w = Working()
    w.given("T", torque, "N.m", meaning="torque")
    w.given("V", displacement, "l", meaning="swept volume")
    i = w.given("i", 2 if cycle == "four-stroke" else 1, "", meaning=f"turns a cycle, {cycle}")
    pressure = 2 * pi * i * torque / displacement / 100
    w.step("p", "2·π·i·T/V/100", pressure, "bar", meaning="mean effective pressure",
           answer="mean pressure")  # fmt: skip
    return Worked(pressure, w)
