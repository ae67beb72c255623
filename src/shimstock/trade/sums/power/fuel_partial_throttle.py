from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--pto '38 hp' --share 50 --slowed 30")
def fuel_partial_throttle(
    *,
    pto: Annotated[float, Of("kW", above=0)],
    share: Annotated[float, Of("%", above=0, most=100)],
    slowed: Annotated[float, Of("%", least=0, below=100, known=(0, 50))],
) -> Worked[float]:
    """Fuel that a diesel tractor may be expected to take geared up and throttled down.

    pto: rated power at the power take-off, in kW.
    share: of the rated power that is taken, in %.
    slowed: by how much the engine runs slower than at full throttle, in %.
    Source: ASABE D497.7, diesel at partial throttle, from memory: full throttle times
    1 − (0.00877 − 0.0045·X)·N.

    >>> round(fuel_partial_throttle(pto=100, share=50, slowed=20).value, 2)
    17.91
    """
    w = Working()
    w.given("P", pto, "kW", meaning="rated power at the power take-off")
    w.given("s", share, "%", meaning="share of it that is taken")
    w.given("N", slowed, "%", meaning="engine slowed by")
    x = w.step("X", "s/100", share / 100, "", meaning="share")
    full = (0.22 * x + 0.096) * pto
    w.step("Q_f", "(0.22·X + 0.096)·P", full, "l/h", meaning="at full throttle",
           answer="at full throttle")  # fmt: skip
    less = w.step("y", "(0.00877 − 0.0045·X)·N", (0.00877 - 0.0045 * x) * slowed, "",
                  meaning="saved")  # fmt: skip
    fuel = w.step("Q", "Q_f·(1 − y)", full * (1 - less), "l/h", meaning="fuel", answer="fuel")
    w.tell("standard", "ASABE D497.7")
    return Worked(fuel, w)
