from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import Amperes


@a_sum(example="--current '300 A' --measured '0.45 V'", cautions=(BATTERY, RUNNING))
def starter_drop_limit(
    *,
    current: Amperes,
    where: Literal["circuit", "positive cable"] = "circuit",
    measured: Annotated[float, Of("V", least=0)] | None = None,
) -> Worked[float]:
    """Voltage that the circuit of a starter may lose while cranking, and whether it loses more.

    Measured with the voltmeter on battery post and starter terminal while it cranks.

    current: that the starter draws, in A.
    where: the whole circuit, or the positive cable from post to terminal, no unit.
    measured: drop that was measured, in V.
    Source: US Army TM 10-3930-671-24, F-303: 0.20 V for each 100 A; over 0.4 V on the positive
    cable is a fault.

    >>> round(starter_drop_limit(current=300).value, 2)
    0.6
    """
    w = Working()
    w.given("I", current, "A", meaning="current while cranking")
    if where == "circuit":
        limit, shown = 0.2 * current / 100, "0.2·I/100"
    else:
        limit, shown = 0.4, "0.4"
    w.step("U_m", shown, limit, "V", meaning=f"most that the {where} may lose", answer="limit")
    if measured is not None:
        w.given("ΔU", measured, "V", meaning="measured")
        good = measured <= limit
        w.tell("within the limit", "yes" if good else "no: clean and remake its joints")
    return Worked(limit, w)
