from math import radians, tan

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working


def backlash_from_centre_distance(
    *, spread: Length, pressure_angle: Deg, unit: str = "in"
) -> Worked[Length]:
    """Backlash gained when two spur gears move a little apart; good for small movements.

    spread: how far the centres moved apart, in `unit`; negative where they came closer.
    pressure_angle: of the teeth, in deg; 14.5 and 20 are usual.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError for an angle that no gear has.
    Source: standard gear geometry, Δj = 2·ΔC·tan φ.

    >>> got = backlash_from_centre_distance(spread=Length(0.015), pressure_angle=Deg(20))
    >>> round(got.value, 4)
    0.0109
    """
    if not 0 < pressure_angle < 45:
        raise ValueError(f"pressure angle {pressure_angle:g} deg must lie between 0 and 45")
    w = Working(source="standard gear geometry, small change of centre distance")
    w.given("ΔC", spread, unit, meaning="centres moved apart by")
    w.given("φ", pressure_angle, "deg", meaning="pressure angle")
    lash = 2 * spread * tan(radians(pressure_angle))
    w.step("Δj", "2·ΔC·tan(φ)", lash, unit, meaning="backlash gained")
    return Worked(Length(lash), w)
