from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, HIGH_PRESSURE_FUEL, RUNNING, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._cut_out import indicated


@a_sum(
    example="--power '15.6 kW' --cut '11.1, 11.03, 10.88, 10.66 kW'",
    cautions=(RUNNING, SHOCK, HIGH_PRESSURE_FUEL, EXHAUST),
)
def morse_powers(
    *,
    power: Annotated[float, Of("kW", above=0)],
    cut: Annotated[Sequence[float], Of("kW", least=0)],
) -> Worked[float]:
    """Mechanical efficiency by the cut-out test, where the powers on the brake are known already.

    power: on the brake with all cylinders firing, in kW.
    cut: powers with each cylinder in turn cut out, at the same speed, in kW.
    Raises NotPossible where a power does not fall when its cylinder is cut, or they do not add up.
    Source: Morse test; Rajput, Textbook of Internal Combustion Engines, example 17.45.

    >>> round(morse_powers(power=15.6, cut=[11.1, 11.03, 10.88, 10.66]).value, 2)
    83.29
    """
    w = Working()
    w.given("P", power, "kW", meaning="all cylinders firing")
    symbol, total = indicated(w, "P", power, cut, "kW")
    w.step("P_t", symbol, total, "kW", meaning="indicated power", answer="indicated power")
    w.step("P_f", "P_t − P", total - power, "kW", meaning="friction", answer="friction power")
    share = w.step("η", "100·P/P_t", 100 * power / total, "%", meaning="mechanical efficiency",
                   answer="mechanical efficiency")  # fmt: skip
    return Worked(share, w)
