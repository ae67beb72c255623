from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import Amperes


@a_sum(example="--current '200 A' --resistance '0.01 ohm'", cautions=(BATTERY,))
def joint_drop(
    *, current: Amperes, resistance: Annotated[float, Of("ohm", least=0)]
) -> Worked[float]:
    """Voltage and heat that one bad joint, clamp or switch takes.

    current: that runs through it, in A.
    resistance: of the joint, in ohm.
    Source: Ohm's law.

    >>> joint_drop(current=200, resistance=0.01).value
    2.0
    """
    w = Working()
    w.given("I", current, "A", meaning="current")
    w.given("R", resistance, "ohm", meaning="resistance of the joint")
    drop = w.step("ΔU", "I·R", current * resistance, "V", meaning="lost in it", answer="drop")
    w.step("P", "I·ΔU", current * drop, "W", meaning="heat in it", answer="heat")
    return Worked(drop, w)
