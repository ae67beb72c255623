from math import pi
from typing import Annotated

from shimstock.trade.numbers.units import Length, Teeth
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--driving 38 --driven 114 --circular-pitch '1 in'")
def centre_distance(
    *,
    driving: Annotated[Teeth, Of("", least=1, found="driver teeth")],
    driven: Annotated[Teeth, Of("", least=1, found="driven teeth")],
    circular_pitch: Annotated[Length, Of("length", above=0)],
    unit: str = "in",
) -> Worked[Length]:
    """Distance between the shafts of two spur gears that meet at their pitch circles.

    driving: teeth of the driving gear, a count.
    driven: teeth of the driven gear, a count.
    circular_pitch: one tooth to the next along the pitch circle, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: definition of circular pitch, p = π·d/N.

    >>> got = centre_distance(
    ...     driving=Teeth(38), driven=Teeth(114), circular_pitch=Length(25), unit="mm")
    >>> round(got.value, 2)
    604.79
    """
    w = Working()
    w.given("N_1", driving, "teeth", meaning="driving gear")
    w.given("N_2", driven, "teeth", meaning="driven gear")
    w.given("p", circular_pitch, unit, meaning="circular pitch")
    d_1, d_2 = circular_pitch * driving / pi, circular_pitch * driven / pi
    w.step("d_1", "p·N_1/π", d_1, unit, meaning="pitch diameter", answer="driving diameter")
    w.step("d_2", "p·N_2/π", d_2, unit, meaning="pitch diameter", answer="driven diameter")
    centre = (d_1 + d_2) / 2
    w.step("C", "(d_1 + d_2)/2", centre, unit, meaning="centre distance", answer="centre distance")
    return Worked(Length(centre), w)
