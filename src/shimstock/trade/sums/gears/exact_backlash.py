from math import acos, cos, degrees, radians, tan

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working


def exact_backlash(
    *, centre: Length, spread: Length, pressure_angle: Deg, unit: str = "in"
) -> Worked[Length]:
    """Backlash of two spur gears without lash at their true centres, moved apart by any amount.

    centre: centre distance at which they would run without lash, in `unit`.
    spread: how far apart they moved from there, in `unit`.
    pressure_angle: of the teeth at `centre`, in deg.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where the gears would come closer than without lash.
    Source: geometry of the involute, j = 2·C'·(inv φ' − inv φ) with cos φ' = C·cos φ/C'.

    >>> got = exact_backlash(
    ...     centre=Length(90), spread=Length(0.3), pressure_angle=Deg(20), unit="mm")
    >>> round(got.value, 4)
    0.2218
    """
    if not (centre > 0 and spread >= 0 and 0 < pressure_angle < 45):
        raise ValueError(
            f"centre {centre:g} {unit} must be above 0, spread {spread:g} {unit} not below 0, "
            f"pressure angle {pressure_angle:g} deg between 0 and 45"
        )
    w = Working(source="geometry of the involute")
    w.given("C", centre, unit, meaning="centre distance without lash")
    w.given("ΔC", spread, unit, meaning="centres moved apart by")
    w.given("φ", pressure_angle, "deg", meaning="pressure angle")
    apart = w.step("C'", "C + ΔC", centre + spread, unit)
    running = acos(centre * cos(radians(pressure_angle)) / apart)
    w.step("φ'", "arccos(C·cos(φ)/C')·180/π", degrees(running), "deg", meaning="running angle")
    lash = 2 * apart * (_inv(running) - _inv(radians(pressure_angle)))
    w.step("j", "2·C'·(inv(φ') − inv(φ))", lash, unit, meaning="backlash at the running pitch line")
    return Worked(Length(lash), w)


def _inv(angle: float) -> float:
    return tan(angle) - angle
