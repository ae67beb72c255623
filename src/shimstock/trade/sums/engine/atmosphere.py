from dataclasses import dataclass

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.engine._cycle import Height, air_pressure


@dataclass(frozen=True)
class Air:
    """Pressure in kPa, temperature in degC, and the pressure as a share of that at the sea."""

    pressure: float
    temperature: float
    share: float


@a_sum(example="--height '3000 ft'")
def atmosphere(*, height: Height) -> Worked[Air]:
    """Pressure and temperature of the standard atmosphere at a height.

    height: above the sea, in m.
    Source: ISO 2533, standard atmosphere, up to 11 000 m.

    >>> round(atmosphere(height=1000).value.pressure, 4)
    89.8746
    """
    w = Working()
    pressure = air_pressure(w, height)
    w.step("p", "p_h", pressure, "kPa", meaning="pressure", answer="pressure")
    t = w.step("t", "15 − 0.0065·h", 15 - 0.0065 * height, "degC", answer="temperature")
    share = w.step("q", "p/101.325", pressure / 101.325, "", meaning="of that at the sea",
                   answer="share")  # fmt: skip
    return Worked(Air(pressure, t, share), w)
