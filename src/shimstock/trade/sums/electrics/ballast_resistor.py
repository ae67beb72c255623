from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import Supply, Volts


@a_sum(
    example="--supply '13.8 V' --coil '1.5 ohm' --wanted '6.9 V'",
    cautions=(SHOCK, "A ballast resistor runs hot: mount it on metal, away from wires and fuel."),
)
def ballast_resistor(
    *,
    supply: Supply,
    coil: Annotated[float, Of("ohm", above=0)],
    wanted: Volts,
) -> Worked[float]:
    """Resistor before a coil that brings the coil to its own voltage, as after 6 to 12 volts.

    With the points closed and the engine standing; running, the coil sees less.

    supply: voltage of the battery, charging if it runs long, in V.
    coil: primary resistance of the coil, in ohm.
    wanted: voltage that the coil is made for, in V.
    Raises NotPossible where the coil wants as much as the supply has, or more.
    Source: Ohm's law.

    >>> ballast_resistor(supply=12, coil=1.5, wanted=6).value
    1.5
    """
    if wanted >= supply:
        rule = f"must be below the supply, {supply:g} V"
        raise NotPossible(f"wanted {wanted:g} V", rule, "leave it out, or swap them")
    w = Working()
    w.given("U", supply, "V", meaning="supply")
    w.given("R_c", coil, "ohm", meaning="coil")
    w.given("U_c", wanted, "V", meaning="for the coil")
    current = w.step("I", "U_c/R_c", wanted / coil, "A", meaning="current", answer="current")
    over = w.step("U_b", "U − U_c", supply - wanted, "V", meaning="over the resistor")
    ohms = w.step("R_b", "U_b/I", over / current, "ohm", meaning="resistor", answer="resistor")
    w.step("P_b", "U_b·I", over * current, "W", meaning="heat in the resistor", answer="heat")
    return Worked(ohms, w)
