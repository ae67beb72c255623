from math import pi

from shimstock.trade.numbers.units import Length, Teeth
from shimstock.trade.numbers.working import Worked, Working


def centre_distance(
    *, driving: Teeth, driven: Teeth, circular_pitch: Length, unit: str = "in"
) -> Worked[Length]:
    """Distance between the shafts of two spur gears that meet at their pitch circles.

    driving: teeth of the driving gear, a count.
    driven: teeth of the driven gear, a count.
    circular_pitch: one tooth to the next along the pitch circle, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where one of them is not above 0.
    Source: definition of circular pitch, p = π·d/N.

    >>> got = centre_distance(
    ...     driving=Teeth(38), driven=Teeth(114), circular_pitch=Length(25), unit="mm")
    >>> round(got.value, 2)
    604.79
    """
    if min(driving, driven) <= 0 or circular_pitch <= 0:
        raise ValueError(f"{driving} and {driven} teeth, pitch {circular_pitch:g}: all must be > 0")
    w = Working(source="definition of circular pitch")
    w.given("N_1", driving, "teeth")
    w.given("N_2", driven, "teeth")
    w.given("p", circular_pitch, unit, meaning="circular pitch")
    d_1 = w.step("d_1", "p·N_1/π", circular_pitch * driving / pi, unit, meaning="pitch diameter")
    d_2 = w.step("d_2", "p·N_2/π", circular_pitch * driven / pi, unit, meaning="pitch diameter")
    centre = w.step("C", "(d_1 + d_2)/2", (d_1 + d_2) / 2, unit, meaning="centre distance")
    return Worked(Length(centre), w)
