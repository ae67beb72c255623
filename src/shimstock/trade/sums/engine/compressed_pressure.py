from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Ratio


@a_sum(example="--ratio 5.5 --exponent 1.3")
def compressed_pressure(
    *,
    ratio: Ratio,
    exponent: Annotated[float, Of("", least=1, most=1.67, known=(1.2, 1.4))] = 1.35,
    start: Annotated[float, Of("bar", above=0, most=10)] = 1.013,
) -> Worked[float]:
    """Pressure at the end of compression, absolute, with both valves shut from the bottom.

    ratio: compression ratio, no unit.
    exponent: of the compression; 1.2 slow and cold to 1.4 fast and tight, no unit.
    start: absolute pressure at the bottom, in bar.
    Source: polytropic compression, p_2 = p_1·r^n; Rajput, Internal Combustion Engines, ex. 17.14.

    >>> round(compressed_pressure(ratio=5, start=0.9).value, 4)
    7.9041
    """
    w = Working()
    w.given("r", ratio, "", meaning="compression ratio")
    w.given("n", exponent, "", meaning="exponent of the compression")
    w.given("p_1", start, "bar", meaning="absolute pressure at the bottom")
    end = start * ratio**exponent
    w.step("p_2", "p_1·r^n", end, "bar", meaning="absolute, at the top", answer="pressure")
    return Worked(end, w)
