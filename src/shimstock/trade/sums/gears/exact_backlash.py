from math import acos, cos, degrees, radians, tan
from typing import Annotated

from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--centre '4 2/3 in' --spread '0.020 in' --pressure-angle 20")
def exact_backlash(
    *,
    centre: Annotated[Length, Of("length", above=0)],
    spread: Annotated[Length, Of("length", least=0)],
    pressure_angle: Annotated[Deg, Of("deg", above=0, below=45, found="pressure angle")],
    unit: str = "in",
) -> Worked[Length]:
    """Backlash of two spur gears without lash at their true centres, moved apart by any amount.

    centre: centre distance at which they would run without lash, in `unit`.
    spread: how far apart they moved from there, in `unit`.
    pressure_angle: of the teeth at `centre`, in deg.
    unit: unit of the lengths, such as in or mm.
    Source: geometry of the involute, j = 2·C'·(inv φ' − inv φ) with cos φ' = C·cos φ/C'.

    >>> got = exact_backlash(
    ...     centre=Length(90), spread=Length(0.3), pressure_angle=Deg(20), unit="mm")
    >>> round(got.value, 4)
    0.2218
    """
    w = Working()
    w.given("C", centre, unit, meaning="centre distance without lash")
    w.given("ΔC", spread, unit, meaning="centres moved apart by")
    w.given("φ", pressure_angle, "deg", meaning="pressure angle")
    apart = w.step("C'", "C + ΔC", centre + spread, unit)
    running = acos(centre * cos(radians(pressure_angle)) / apart)
    w.step(
        "φ'",
        "arccos(C·cos(φ)/C')·180/π",
        degrees(running),
        "deg",
        meaning="running angle",
        answer="running angle",
    )
    # Nothing below 0 is left by rounding where the centres have not moved.
    lash = max(0.0, 2 * apart * (_inv(running) - _inv(radians(pressure_angle))))
    meaning = "backlash at the running pitch line"
    w.step("j", "2·C'·(inv(φ') − inv(φ))", lash, unit, meaning=meaning, answer="backlash")
    return Worked(Length(lash), w)


def _inv(angle: float) -> float:
    return tan(angle) - angle
