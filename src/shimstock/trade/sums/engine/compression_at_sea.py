from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Height, air_pressure


@a_sum(example="--reading '96 psi' --height '1000 m' --in psi",
       cautions=(BOOK_FIRST, RUNNING))  # fmt: skip
def compression_at_sea(
    *, reading: Annotated[float, Of("bar", above=0, most=80)], height: Height
) -> Worked[float]:
    """What a compression reading taken at a height would be at the sea, where books have it.

    The gauge reads with the pressure of the air, nothing else being changed. Printed tables of
    altitude factors differ from this by several per cent.

    reading: on the gauge, in bar.
    height: of the shed above the sea, in m.
    Source: polytropic compression, reading ∝ pressure of the air by ISO 2533.

    >>> round(compression_at_sea(reading=6.671, height=1000).value, 3)
    7.521
    """
    w = Working()
    w.given("p_g", reading, "bar", meaning="on the gauge")
    air = air_pressure(w, height)
    sea = reading * 101.325 / air
    w.step("p_0", "p_g·101.325/p_h", sea, "bar", meaning="at the sea", answer="at the sea")
    return Worked(sea, w)
