from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--pulling 100 --free 88", cautions=(ROLLOVER,))
def wheel_slip(
    *,
    pulling: Annotated[float, Of("", above=0)],
    free: Annotated[float, Of("", above=0)],
) -> Worked[float]:
    """Slip of driving wheels or tracks by OECD Code 2, from their turns over the same distance.

    The denominator is the turns under pull, as in OECD Code 2. Some divide by the turns without
    pull; that number is larger and is shown beside it.

    pulling: turns of the driving wheels over the distance under pull, no unit.
    free: turns over the same distance without pull, no unit.
    Raises NotPossible where the wheels turn less under pull.
    Source: OECD Code 2, wheel slip, from memory.

    >>> wheel_slip(pulling=100, free=88).value
    12.0
    """
    if pulling < free:
        rule = f"must not be fewer than the free turns, {free:g}"
        raise NotPossible(f"pulling {pulling:g} turns", rule, "look whether the two are swapped")
    w = Working()
    w.given("N_1", pulling, "", meaning="turns under pull")
    w.given("N_0", free, "", meaning="turns without pull")
    slip = 100 * (pulling - free) / pulling
    w.step("s", "100·(N_1 − N_0)/N_1", slip, "%", meaning="by OECD Code 2", answer="slip")
    w.step("s_0", "100·(N_1 − N_0)/N_0", 100 * (pulling - free) / free, "%",
           meaning="by turns without pull", answer="slip by free turns")  # fmt: skip
    return Worked(slip, w)
