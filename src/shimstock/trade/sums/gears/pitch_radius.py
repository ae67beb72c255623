from shimstock.trade.numbers.units import Inch, PerInch, Teeth
from shimstock.trade.numbers.working import Worked, Working


def pitch_radius(*, teeth: Teeth, diametral_pitch: PerInch) -> Worked[Inch]:
    """Radius at which a gear of an inch pitch meets its mate, in inches.

    teeth: number of teeth, a count.
    diametral_pitch: teeth per inch of pitch diameter.
    Raises ValueError where either is not above 0.
    Source: definition of diametral pitch, P_d = N/d.

    >>> pitch_radius(teeth=Teeth(32), diametral_pitch=PerInch(8)).value
    2.0
    """
    if teeth <= 0 or diametral_pitch <= 0:
        raise ValueError(f"{teeth} teeth at diametral pitch {diametral_pitch:g}: both must be > 0")
    w = Working(source="definition of diametral pitch")
    w.given("N", teeth, "teeth")
    w.given("P_d", diametral_pitch, "1/in", meaning="diametral pitch")
    radius = w.step("r", "N/(2·P_d)", teeth / (2 * diametral_pitch), "in", meaning="pitch radius")
    return Worked(Inch(radius), w)
