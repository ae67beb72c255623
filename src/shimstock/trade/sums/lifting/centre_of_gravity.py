from dataclasses import dataclass
from math import asin, atan, hypot, pi, radians, tan
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import JACK
from shimstock.trade.sums.declare import Of, a_sum

Load = Annotated[float, Of("kg", least=0)]


@dataclass(frozen=True)
class Centre:
    """Before the rear axle and above its centre line, in mm."""

    forward: float
    above: float


@a_sum(
    example="--weight '5500 lb' --front '2090 lb' --wheelbase '87 in' --raised '24 in' "
    "--front-raised '1980 lb'",
    cautions=(JACK,),
)
def centre_of_gravity(
    *,
    weight: Annotated[float, Of("kg", above=0, found="weight")],
    front: Load,
    wheelbase: Annotated[float, Of("mm", above=0, found="wheelbase")],
    raised: Annotated[float, Of("mm", above=0)],
    front_raised: Load,
    lower: Annotated[float, Of("mm")] = 0.0,
) -> Worked[Centre]:
    """Where a tractor's weight acts, from weighing its front axle level and with the front raised.

    Small front wheels put the front axle's centre lower than the rear's: measure by how much.

    weight: of the whole machine, in kg.
    front: on the front axle standing level, in kg.
    wheelbase: front axle to rear axle, in mm.
    raised: how high the front axle was lifted, in mm.
    front_raised: on the front axle while raised, in kg.
    lower: front axle's centre below the rear's on the level, in mm.
    Raises NotPossible where the front outweighs the whole, or is raised beyond the wheelbase.
    Source: statics, as ISO 789-6 weighs; an agricultural university's course on tractor systems.

    >>> got = centre_of_gravity(weight=2500, front=950, wheelbase=2200, raised=600,
    ...     front_raised=900).value
    >>> round(got.forward), round(got.above, 1)
    (836, 155.2)
    """
    for name, part in (("front", front), ("front raised", front_raised)):
        if part > weight:
            rule = f"cannot be more than the whole, {weight:g} kg"
            raise NotPossible(f"{name} {part:g} kg", rule, "look whether they are swapped")
    if raised >= wheelbase:
        rule = f"must be less than the wheelbase, {wheelbase:g} mm"
        raise NotPossible(f"raised {raised:g} mm", rule, "look at its unit")
    w = Working()
    w.given("W", weight, "kg", meaning="weight")
    w.given("R_f", front, "kg", meaning="front axle, level")
    w.given("L", wheelbase, "mm", meaning="wheelbase")
    w.given("h", raised, "mm", meaning="front axle raised by")
    w.given("R_f'", front_raised, "kg", meaning="front axle, raised")
    d = w.given("d", lower, "mm", meaning="front centre below the rear's, level")
    forward = front * wheelbase / weight
    w.step("x", "R_f·L/W", forward, "mm", meaning="before the rear axle", answer="forward")
    between = w.step("l", "√(L² + d²)", hypot(wheelbase, d), "mm", meaning="centre to centre")
    if abs(raised - d) >= between:
        rule = f"is more than the axles are apart, {between:g} mm"
        raise NotPossible(f"raised {raised:g} mm", rule, "look at its unit")
    tilt = (asin((raised - d) / between) + atan(d / wheelbase)) * 180 / pi
    w.step("β", "(arcsin((h − d)/l) + arctan(d/L))·180/π", tilt, "deg", meaning="tilted by")
    above = (front - front_raised) * wheelbase / (weight * tan(radians(tilt)))
    above -= front_raised * d / weight
    w.step("y", "(R_f − R_f')·L/(W·tan(β)) − R_f'·d/W", above, "mm",
           meaning="above the rear axle's centre", answer="above")  # fmt: skip
    return Worked(Centre(forward, above), w)
