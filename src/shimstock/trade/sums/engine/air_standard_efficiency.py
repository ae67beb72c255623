from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Ratio


@a_sum(example="--ratio 5.5")
def air_standard_efficiency(
    *, ratio: Ratio, gamma: Annotated[float, Of("", above=1, most=1.67, known=(1.2, 1.4))] = 1.4
) -> Worked[float]:
    """Efficiency that the compression ratio alone would allow a spark engine, for comparing.

    No engine comes near it; it tells what a change of compression can bring at most.

    ratio: compression ratio, no unit.
    gamma: ratio of the specific heats of air, no unit.
    Source: air-standard cycle at constant volume, η = 1 − r^(1 − γ); Keswani, IC Engines, ex. 3.2.

    >>> round(air_standard_efficiency(ratio=8).value, 2)
    56.47
    """
    w = Working()
    w.given("r", ratio, "", meaning="compression ratio")
    w.given("γ", gamma, "", meaning="ratio of specific heats")
    share = 100 * (1 - ratio ** (1 - gamma))
    w.step("η", "100·(1 − r^(1 − γ))", share, "%", meaning="of the heat", answer="efficiency")
    return Worked(share, w)
