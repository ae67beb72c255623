"""How fast a push runs through fuel."""

from math import sqrt

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.injection._fuel import stiffness


def wave_speed(w: Working, density: float, squeeze: float | None, modulus: float | None) -> float:
    """Speed of sound in the fuel in m/s, kept as a; its density as ρ.

    Raises NotPossible where the squeeze is not given once.
    """
    w.given("ρ", density, "g/cc", meaning="density of the fuel")
    stiff = stiffness(w, squeeze, modulus)
    fast = sqrt(1000 * stiff / density)
    shown = "√(K·1000000/(ρ·1000))"
    return w.step("a", shown, fast, "m/s", meaning="speed of the wave", answer="wave speed")
