from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, RUNNING, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Ratio
from shimstock.trade.sums.engine._cycle import Height, air_pressure


@a_sum(example="--ratio 5.5 --height '1000 m' --exponent 1.25 --in psi",
       cautions=(BOOK_FIRST, RUNNING, SHOCK))  # fmt: skip
def gauge_compression(
    *,
    ratio: Ratio,
    height: Height = 0.0,
    exponent: Annotated[float, Of("", least=1, most=1.67, known=(1.2, 1.4))] = 1.25,
) -> Worked[float]:
    """What a compression gauge may show at cranking speed at a height above the sea.

    The exponent is a free choice between slow leaking cranking (1.2) and a fast tight engine
    (1.4): compare engines and cylinders with the same one, and with the book's figure.

    ratio: compression ratio, no unit.
    height: of the shed above the sea, in m.
    exponent: of the compression, no unit.
    Source: polytropic compression from the air of ISO 2533, p = p_h·(r^n − 1).

    >>> round(gauge_compression(ratio=5.5, height=1000).value, 3)
    6.671
    """
    w = Working()
    w.given("r", ratio, "", meaning="compression ratio")
    w.given("n", exponent, "", meaning="exponent of the compression")
    air = air_pressure(w, height)
    shown = air / 100 * (ratio**exponent - 1)
    w.step("p_g", "p_h/100·(r^n − 1)", shown, "bar", meaning="on the gauge", answer="gauge")
    return Worked(shown, w)
