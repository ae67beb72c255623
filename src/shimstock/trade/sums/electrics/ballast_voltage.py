from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import Supply


@a_sum(example="--supply '12 V' --coil '1.5 ohm' --ballast '1.5 ohm'", cautions=(SHOCK,))
def ballast_voltage(
    *,
    supply: Supply,
    coil: Annotated[float, Of("ohm", above=0)],
    ballast: Annotated[float, Of("ohm", least=0)] = 0,
) -> Worked[float]:
    """Current through a coil and the voltage it gets behind a ballast resistor.

    With the points closed and the engine standing.

    supply: voltage of the battery, in V.
    coil: primary resistance of the coil, in ohm.
    ballast: resistor before it, in ohm.
    Source: Ohm's law.

    >>> ballast_voltage(supply=12, coil=1.5, ballast=1.5).value
    6.0
    """
    w = Working()
    w.given("U", supply, "V", meaning="supply")
    w.given("R_c", coil, "ohm", meaning="coil")
    w.given("R_b", ballast, "ohm", meaning="ballast")
    current = w.step("I", "U/(R_c + R_b)", supply / (coil + ballast), "A", meaning="current",
                     answer="current")  # fmt: skip
    volts = w.step("U_c", "I·R_c", current * coil, "V", meaning="on the coil", answer="voltage")
    w.step("P_b", "I²·R_b", current**2 * ballast, "W", meaning="heat in the resistor",
           answer="heat")  # fmt: skip
    return Worked(volts, w)
