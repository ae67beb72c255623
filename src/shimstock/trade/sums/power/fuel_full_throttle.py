from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--pto '38 hp' --share 75")
def fuel_full_throttle(
    *,
    pto: Annotated[float, Of("kW", above=0)],
    share: Annotated[float, Of("%", above=0, most=100)] = 100,
) -> Worked[float]:
    """Fuel that a diesel tractor may be expected to take at full throttle, by ASABE D497.7.

    pto: rated power at the power take-off, in kW.
    share: of the rated power that is taken, in %.
    Source: ASABE D497.7, diesel at full throttle, Q = (0.22·X + 0.096)·P, from memory.

    >>> round(fuel_full_throttle(pto=100).value, 1)
    31.6
    """
    w = Working()
    w.given("P", pto, "kW", meaning="rated power at the power take-off")
    w.given("s", share, "%", meaning="share of it that is taken")
    x = w.step("X", "s/100", share / 100, "", meaning="share")
    fuel = (0.22 * x + 0.096) * pto
    w.step("Q", "(0.22·X + 0.096)·P", fuel, "l/h", meaning="fuel", answer="fuel")
    w.step("a", "X·P/Q", x * pto / fuel, "kWh/l", meaning="work from a litre", answer="work")
    w.tell("standard", "ASABE D497.7")
    return Worked(fuel, w)
