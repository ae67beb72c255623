from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--pull '2200 lbf' --speed '3 mph'", cautions=(ROLLOVER,))
def drawbar_power(
    *,
    pull: Annotated[float, Of("kN", least=0, most=500)],
    speed: Annotated[float, Of("km/h", least=0, most=100)],
) -> Worked[float]:
    """Power at the drawbar from pull and travel speed.

    pull: pull along the line of travel, in kN.
    speed: true speed over the ground, in km/h.
    Source: definition, P = F·v; kN times km/h by 3.6 for kW, lbf times mph by 375 for hp.

    >>> round(drawbar_power(pull=6.67, speed=9).value, 3)
    16.675
    """
    w = Working()
    w.given("F", pull, "kN", meaning="pull")
    w.given("v", speed, "km/h", meaning="speed over the ground")
    power = pull * speed / 3.6
    w.step("P", "F·v/3.6", power, "kW", meaning="drawbar power", answer="power")
    return Worked(power, w)
