from math import pi

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working


def angular_play(*, lash: Length, radius: Length, unit: str = "in") -> Worked[Deg]:
    """Angle that a gear can rock while its mate is held, in degrees.

    lash: play between the teeth, in `unit`.
    radius: pitch radius of the gear that rocks, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError for a radius not above 0 or a lash below 0.
    Source: geometry, θ = j/r.

    >>> round(angular_play(lash=Length(0.15), radius=Length(60), unit="mm").value, 5)
    0.14324
    """
    if radius <= 0 or lash < 0:
        raise ValueError(f"radius {radius:g} {unit} must be above 0, lash {lash:g} not below 0")
    w = Working(source="geometry")
    w.given("j", lash, unit, meaning="lash")
    w.given("r", radius, unit, meaning="pitch radius")
    return Worked(Deg(w.step("θ", "j/r·180/π", lash / radius * 180 / pi, "deg")), w)
