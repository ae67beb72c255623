from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.electrics._wire import AsGauge, area_of


@a_sum(example="--gauge 2/0")
def wire_size(*, gauge: AsGauge) -> Worked[float]:
    """Diameter and area of the copper of an American wire gauge.

    A stranded cable has the same area of copper and is thicker across.

    gauge: number of the gauge from 4/0 to 40, no unit.
    Source: American wire gauge, d = 0.005·92^((36 − n)/39) in; T. L. Floyd, Electric Circuit
    Fundamentals, wire table.

    >>> round(wire_size(gauge=-1).working.value("d"), 4)
    0.3648
    """
    w = Working()
    return Worked(area_of(w, gauge, None), w)
