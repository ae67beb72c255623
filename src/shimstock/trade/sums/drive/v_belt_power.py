from math import exp, pi, radians, sin
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.drive._belts import Friction, Tension, Turning, Wrap


@a_sum(example="--pulley '6 in' --speed 1800 --wrap 160 --friction 0.25 --groove 38 "
       "--tight '90 lbf' --in hp", cautions=(RUNNING, BOOK_FIRST))  # fmt: skip
def v_belt_power(
    *,
    pulley: Annotated[float, Of("m", above=0, most=3)],
    speed: Turning,
    wrap: Wrap,
    friction: Friction,
    groove: Annotated[float, Of("deg", least=20, most=60)],
    tight: Tension,
    belts: Annotated[int, Of("", least=1, most=20)] = 1,
) -> Worked[float]:
    """Power that V-belts carry before they slip: the groove wedges them.

    pulley: diameter of the smaller pulley where the belt's cords run, in m.
    speed: of that pulley, in rpm.
    wrap: of the belt round it, in deg.
    friction: of the belt on the flanks, no unit.
    groove: angle between the flanks, in deg.
    tight: pull of the tight side of one belt, in N.
    belts: side by side, a count.
    Source: Khurmi and Gupta, Theory of Machines, chapter on belts, T_1/T_2 = e^(μ·θ/sin β), from
    memory.

    >>> round(v_belt_power(pulley=0.2, speed=1000, wrap=180, friction=0.2, groove=40,
    ...     tight=500).value, 3)
    4.402
    """
    w = Working()
    w.given("D", pulley, "m", meaning="pulley")
    w.given("n", speed, "rpm", meaning="its speed")
    w.given("T_1", tight, "N", meaning="tight side of one belt")
    w.given("z", belts, "", meaning="belts")
    w.given("μ", friction, "", meaning="friction on the flanks")
    w.given("θ", wrap, "deg", meaning="wrap")
    w.given("γ", groove, "deg", meaning="groove")
    wedged = w.step("μ'", "μ/sin(γ/2)", friction / sin(radians(groove / 2)), "", meaning="wedged")
    ratio = w.step("q", "e^(μ'·θ·π/180)", exp(wedged * radians(wrap)), "", meaning="tight to slack")
    slack = w.step("T_2", "T_1/q", tight / ratio, "N", meaning="slack side", answer="slack side")
    v = w.step("v", "π·D·n/60", pi * pulley * speed / 60, "m/s", answer="belt speed")
    power = belts * (tight - slack) * v / 1000
    w.step("P", "z·(T_1 − T_2)·v/1000", power, "kW", meaning="before they slip", answer="power")
    return Worked(power, w)
