from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_OIL
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--pressure '1200 psi' --flow '12 gal/min'", cautions=(HIGH_PRESSURE_OIL,))
def hydraulic_power(
    *,
    pressure: Annotated[float, Of("psi", least=0)],
    flow: Annotated[float, Of("gal/min", least=0)],
) -> Worked[float]:
    """Power in a flow of oil under pressure.

    pressure: of the oil, in psi.
    flow: of the oil, in gal/min.
    Source: Esposito, Fluid Power with Applications, example 5.5, hp = psi·gpm/1714.

    >>> round(hydraulic_power(pressure=1200, flow=19.3).value, 3)
    13.512
    """
    w = Working()
    w.given("p", pressure, "psi", meaning="pressure")
    w.given("Q", flow, "gal/min", meaning="flow")
    power = pressure * flow / 1714
    w.step("P", "p·Q/1714", power, "hp", meaning="in the oil", answer="power")
    return Worked(power, w)
