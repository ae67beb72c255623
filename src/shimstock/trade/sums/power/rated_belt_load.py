from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--power '44.1 hp' --correction 1.03")
def rated_belt_load(
    *,
    power: Annotated[float, Of("hp", above=0)],
    correction: Annotated[float, Of("", above=0, most=3)] = 1,
) -> Worked[float]:
    """Rated belt load of an old official test: 85 per cent of the corrected maximum.

    power: greatest power at the belt as observed in test B, in hp.
    correction: to standard conditions, on the basis of that time, no unit.
    Source: explanation sheets of the official tractor tests: test D at 85 per cent of the maximum
    of test B corrected to standard conditions.

    >>> rated_belt_load(power=40).value
    34.0
    """
    w = Working()
    w.given("P", power, "hp", meaning="maximum observed in test B")
    w.given("c", correction, "", meaning="correction to standard conditions")
    best = w.step("P_0", "c·P", correction * power, "hp", meaning="corrected maximum",
                  answer="corrected maximum")  # fmt: skip
    rated = w.step("P_D", "0.85·P_0", 0.85 * best, "hp", meaning="rated load, test D",
                   answer="rated load")  # fmt: skip
    return Worked(rated, w)
