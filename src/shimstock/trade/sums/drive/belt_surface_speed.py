from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, a_sum

USUAL, EITHER_WAY = 3100.0, 100.0  # feet a minute


@a_sum(example="--pulley '12 in' --speed 975", cautions=(RUNNING,))
def belt_surface_speed(
    *,
    pulley: Annotated[float, Of("ft", above=0, most=10, found="pulley diameter")],
    speed: Annotated[float, Of("rpm", least=0)],
) -> Worked[float]:
    """Speed of the belt on a tractor's belt pulley, against the usual 3100 feet a minute.

    pulley: diameter of the pulley, in ft.
    speed: of the pulley, in rpm.
    Source: v = π·D·n; usual speed 3100 ± 100 ft/min by the belt pulley standard, from memory.

    >>> round(belt_surface_speed(pulley=1, speed=986.76).value)
    3100
    """
    w = Working()
    w.given("D", pulley, "ft", meaning="pulley")
    w.given("n", speed, "rpm", meaning="speed")
    w.given("v_0", USUAL, "ft/min", meaning=f"usual, ± {EITHER_WAY:g}")
    v = w.step("v", "π·D·n", pi * pulley * speed, "ft/min", meaning="of the belt", answer="speed")
    off = w.step("Δv", "v − v_0", v - USUAL, "ft/min", meaning="above the usual")
    w.tell("usual", "yes" if abs(off) <= EITHER_WAY else "no")
    return Worked(v, w)
