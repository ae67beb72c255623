from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import (
    ONE_BAR,
    Modulus,
    Pressure,
    Squeeze,
    shrunk,
    squeezed,
)


@a_sum(
    example="--volume '0.85 in3' --pressure '1900 psi' --modulus '200000 psi'",
    cautions=(HIGH_PRESSURE_FUEL,),
)
def compressed_volume(
    *,
    volume: Annotated[float, Of("cc", above=0)],
    pressure: Pressure,
    start: Pressure = ONE_BAR,
    squeeze: Squeeze | None = None,
    modulus: Modulus | None = None,
) -> Worked[float]:
    """How much a volume of fuel or oil shrinks under pressure.

    volume: before it is pressed, in cc.
    pressure: that it is pressed to, in bar.
    start: pressure before, in bar.
    squeeze: share that it shrinks for each bar, in per.bar.
    modulus: bulk modulus, instead of the squeeze, in MPa.
    Raises NotPossible where the pressure does not rise, or the squeeze is not given once.
    Source: A. Esposito, Fluid Power with Applications, example 2.11, ΔV = V·Δp/K.

    >>> round(compressed_volume(volume=100, pressure=137.4, start=6.87, modulus=1718).value, 1)
    759.8
    """
    w = Working()
    w.given("V", volume, "cc", meaning="before")
    beta = squeezed(w, squeeze, modulus)
    less = shrunk(w, volume, beta, pressure, start)
    share = 100 * beta * (pressure - start)
    w.step("q", "100·β·(p − p_0)", share, "%", meaning="of the volume", answer="share")
    return Worked(less, w)
