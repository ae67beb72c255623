from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--torque '175 lbf.ft' --speed '1150 rpm'")
def shaft_power(
    *,
    torque: Annotated[float, Of("N.m", least=0)],
    speed: Annotated[float, Of("rpm", least=0)],
) -> Worked[float]:
    """Power of a turning shaft from its torque and speed.

    torque: torque on the shaft, in N.m.
    speed: speed of the shaft, in rpm.
    Source: definition of power, P = 2·π·n·T; the same as lbf.ft times rpm by 5252.1 for hp.

    >>> round(shaft_power(torque=175, speed=500).value, 4)
    9.163
    """
    w = Working()
    w.given("T", torque, "N.m", meaning="torque")
    w.given("n", speed, "rpm", meaning="speed")
    power = 2 * pi * speed * torque / 60000
    w.step("P", "2·π·n·T/60000", power, "kW", meaning="power", answer="power")
    return Worked(power, w)
