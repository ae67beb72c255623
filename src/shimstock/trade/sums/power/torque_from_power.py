from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--power '62 hp' --speed '850 rpm' --in lbf.ft")
def torque_from_power(
    *,
    power: Annotated[float, Of("kW", least=0)],
    speed: Annotated[float, Of("rpm", above=0)],
) -> Worked[float]:
    """Torque on a shaft that carries a power at a speed.

    power: power that the shaft carries, in kW.
    speed: speed of the shaft, in rpm.
    Source: definition of power, T = P/(2·π·n).

    >>> round(torque_from_power(power=9.163, speed=500).value, 2)
    175.0
    """
    w = Working()
    w.given("P", power, "kW", meaning="power")
    w.given("n", speed, "rpm", meaning="speed")
    torque = 60000 * power / (2 * pi * speed)
    w.step("T", "60000·P/(2·π·n)", torque, "N.m", meaning="torque", answer="torque")
    return Worked(torque, w)
