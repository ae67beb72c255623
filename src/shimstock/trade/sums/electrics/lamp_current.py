from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import System


@a_sum(example="--power '35 W' --voltage '6 V' --lamps 2")
def lamp_current(
    *,
    power: Annotated[float, Of("W", above=0)],
    voltage: System,
    lamps: Annotated[int, Of("", least=1)] = 1,
) -> Worked[float]:
    """Current of lamps from what is stamped on the bulb.

    A cold filament draws many times as much for the first instant.

    power: of one lamp, in W.
    voltage: that the power is stamped for, in V.
    lamps: how many burn at once, a count.
    Source: definition of electrical power, I = P/U.

    >>> lamp_current(power=36, voltage=6, lamps=2).value
    12.0
    """
    w = Working()
    w.given("P", power, "W", meaning="one lamp")
    w.given("U", voltage, "V", meaning="voltage")
    w.given("z", lamps, "", meaning="lamps")
    current = w.step("I", "z·P/U", lamps * power / voltage, "A", meaning="current",
                     answer="current")  # fmt: skip
    return Worked(current, w)
