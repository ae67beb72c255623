from math import radians, tan
from typing import Annotated

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--spread '0.015 in' --pressure-angle 20")
def backlash_from_centre_distance(
    *,
    spread: Annotated[Length, Of("length")],
    pressure_angle: Annotated[Deg, Of("deg", above=0, below=45, found="pressure angle")],
    unit: str = "in",
) -> Worked[Length]:
    """Backlash gained when two spur gears move a little apart; good for small movements.

    spread: how far the centres moved apart, in `unit`; negative where they came closer.
    pressure_angle: of the teeth, in deg; 14.5 and 20 are usual.
    unit: unit of the lengths, such as in or mm.
    Source: standard gear geometry, Δj = 2·ΔC·tan φ, for a small change of centre distance.

    >>> got = backlash_from_centre_distance(spread=Length(0.015), pressure_angle=Deg(20))
    >>> round(got.value, 4)
    0.0109
    """
    w = Working()
    w.given("ΔC", spread, unit, meaning="centres moved apart by")
    w.given("φ", pressure_angle, "deg", meaning="pressure angle")
    lash = 2 * spread * tan(radians(pressure_angle))
    w.step("Δj", "2·ΔC·tan(φ)", lash, unit, meaning="backlash gained", answer="backlash")
    return Worked(Length(lash), w)
