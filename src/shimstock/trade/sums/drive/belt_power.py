from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.drive._belts import Friction, Tension, Turning, Wrap, grip


@a_sum(example="--pulley '14 in' --speed 975 --wrap 170 --friction 0.3 --tight '500 lbf' --in hp",
       cautions=(RUNNING,))  # fmt: skip
def belt_power(
    *,
    pulley: Annotated[float, Of("m", above=0, most=3)],
    speed: Turning,
    wrap: Wrap,
    friction: Friction,
    tight: Tension,
) -> Worked[float]:
    """Power that a flat belt carries before it slips, from the pull of its tight side.

    The belt's own flight outwards is left out; it takes some of the grip above about 20 m/s.

    pulley: diameter of the smaller pulley, in m.
    speed: of that pulley, in rpm.
    wrap: of the belt round it, in deg.
    friction: of the belt on the pulley, no unit.
    tight: pull of the tight side, in N.
    Source: Khurmi and Gupta, Theory of Machines, example 11.4, page 342.

    >>> round(belt_power(pulley=0.6, speed=200, wrap=160, friction=0.25, tight=2500).value, 2)
    7.89
    """
    w = Working()
    w.given("D", pulley, "m", meaning="pulley")
    w.given("n", speed, "rpm", meaning="its speed")
    w.given("T_1", tight, "N", meaning="tight side")
    ratio = grip(w, friction, wrap)
    slack = w.step("T_2", "T_1/q", tight / ratio, "N", meaning="slack side", answer="slack side")
    v = w.step("v", "π·D·n/60", pi * pulley * speed / 60, "m/s", answer="belt speed")
    power = (tight - slack) * v / 1000
    w.step("P", "(T_1 − T_2)·v/1000", power, "kW", meaning="before it slips", answer="power")
    return Worked(power, w)
