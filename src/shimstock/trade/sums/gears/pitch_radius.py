from typing import Annotated

from shimstock.trade.numbers.units import Inch, PerInch, Teeth
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--teeth 32 --diametral-pitch 8")
def pitch_radius(
    *,
    teeth: Annotated[Teeth, Of("", least=1, found="driven teeth")],
    diametral_pitch: Annotated[PerInch, Of("", above=0, found="pitch")],
) -> Worked[Inch]:
    """Radius at which a gear of an inch pitch meets its mate, in inches.

    teeth: number of teeth, a count.
    diametral_pitch: teeth per inch of pitch diameter.
    Source: definition of diametral pitch, P_d = N/d.

    >>> pitch_radius(teeth=Teeth(32), diametral_pitch=PerInch(8)).value
    2.0
    """
    w = Working()
    w.given("N", teeth, "teeth", meaning="teeth")
    w.given("P_d", diametral_pitch, "1/in", meaning="diametral pitch")
    radius = teeth / (2 * diametral_pitch)
    w.step("r", "N/(2·P_d)", radius, "in", meaning="pitch radius", answer="radius")
    return Worked(Inch(radius), w)
