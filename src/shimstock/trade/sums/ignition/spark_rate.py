from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SHOCK
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.ignition._sparks import Cycle, Cylinders, Speed, sparks_a_second


@a_sum(example="--speed '1650 rpm' --cylinders 4", cautions=(SHOCK,))
def spark_rate(
    *, speed: Speed, cylinders: Cylinders, cycle: Cycle = "four-stroke"
) -> Worked[float]:
    """How many sparks an engine wants, and the time from one to the next.

    speed: of the crankshaft, in rpm.
    cylinders: how many there are, a count.
    cycle: four-stroke or two-stroke, no unit.
    Source: geometry, f = n·z/120 for a four-stroke.

    >>> spark_rate(speed=975, cylinders=2).value
    16.25
    """
    w = Working()
    rate = sparks_a_second(w, speed, cylinders, cycle)
    w.step("f_m", "60·f", 60 * rate, "per.min", answer="a minute")
    w.step("T", "1000/f", 1000 / rate, "ms", meaning="from one to the next", answer="period")
    return Worked(rate, w)
