from math import sqrt
from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

# Slope and start of the straight part, slope and start under the root.
FACTORS = {"diesel": (2.64, 3.91, 738.0, 173.0), "petrol": (2.74, 3.15, 697.0, 0.0)}


@a_sum(example="--pto '38 hp' --share 75 --fuel petrol --in gal/hp.h")
def fuel_older_d497(
    *,
    pto: Annotated[float, Of("kW", above=0)],
    share: Annotated[float, Of("%", above=0, most=100)] = 100,
    fuel: Literal["diesel", "petrol"] = "diesel",
) -> Worked[float]:
    """Fuel that a tractor may be expected to take, by the older ASAE D497.4.

    It knows petrol too, and lies well above D497.7, as older engines do.

    pto: rated power at the power take-off, in kW.
    share: of the rated power that is taken, in %.
    fuel: diesel or petrol, no unit.
    Source: ASAE D497.4, specific fuel by volume, from memory.

    >>> round(fuel_older_d497(pto=100).value, 4)
    0.4229
    """
    w = Working()
    w.given("P", pto, "kW", meaning="rated power at the power take-off")
    w.given("s", share, "%", meaning="share of it that is taken")
    x = w.step("X", "s/100", share / 100, "", meaning="share")
    a, b, c, d = FACTORS[fuel]
    root = w.step("y", f"√({c:g}·X + {d:g})", sqrt(c * x + d), "")
    specific = a * x + b - 0.203 * root
    w.step("q", f"{a:g}·X + {b:g} − 0.203·y", specific, "l/kWh", meaning=f"fuel for work, {fuel}",
           answer="for work")  # fmt: skip
    w.step("Q", "q·X·P", specific * x * pto, "l/h", meaning="fuel", answer="fuel")
    w.tell("standard", "ASAE D497.4")
    return Worked(specific, w)
