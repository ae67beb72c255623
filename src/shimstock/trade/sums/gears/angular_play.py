from math import pi
from typing import Annotated

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--lash '0.006 in' --radius '2 in'")
def angular_play(
    *,
    lash: Annotated[Length, Of("length", least=0)],
    radius: Annotated[Length, Of("length", above=0, found="radius")],
    unit: str = "in",
) -> Worked[Deg]:
    """Angle that a gear can rock while its mate is held, in degrees.

    lash: play between the teeth, in `unit`.
    radius: pitch radius of the gear that rocks, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: geometry, θ = j/r; good while the play is small beside the radius.

    >>> round(angular_play(lash=Length(0.15), radius=Length(60), unit="mm").value, 5)
    0.14324
    """
    w = Working()
    w.given("j", lash, unit, meaning="lash")
    w.given("r", radius, unit, meaning="pitch radius")
    angle = lash / radius * 180 / pi
    w.step("θ", "j/r·180/π", angle, "deg", meaning="angle of play", answer="angle")
    return Worked(Deg(angle), w)
