from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked
from shimstock.trade.sums.brakes._long_shoe import Angle, Friction, Length, Shoe
from shimstock.trade.sums.brakes._one_shoe import Pressed, one_shoe
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST, SPRING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.3 --width '2 in' --radius '8 in' --pivot '10 in' --start 5 --end 130 "
    "--arm '22 in' --force '400 lbf'",
    cautions=(BRAKES, LINING_DUST, SPRING),
)
def outside_shoe(
    *,
    friction: Friction,
    width: Length,
    radius: Length,
    pivot: Length,
    start: Angle,
    end: Angle,
    arm: Length,
    pressure: Annotated[float, Of("pressure", above=0)] | None = None,
    force: Annotated[float, Of("force", above=0)] | None = None,
    turning: Literal["leading", "trailing"] = "leading",
    tilt: Annotated[float, Of("deg", least=-90, most=90)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Torque of one long hinged shoe that presses on a drum from outside.

    Give either the largest pressure or the force that closes the shoe; the other comes out.

    friction: friction of the lining on the drum, no unit.
    width: width of the lining, in `unit`.
    radius: radius of the drum, in `unit`.
    pivot: from the centre of the drum to the hinge, in `unit`.
    start: from the hinge to where the lining begins, in deg.
    end: from the hinge to where the lining ends, in deg.
    arm: from the hinge square to the line of the force, in `unit`.
    pressure: largest pressure on the lining, in the pressure of `unit`.
    force: force that closes the shoe, in the force of `unit`.
    turning: leading where the friction usually helps the shoe, trailing the other way, no unit.
    tilt: lean of the force from square to the line to the hinge, for its reaction, in deg.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the lining ends before it begins, the hinge lies inside the drum, not
    exactly one of pressure and force is given, or a force is asked of a shoe that locks.
    Source: long external shoe, J. E. Shigley, Mechanical Engineering Design, chapter 16, from
    memory.

    >>> round(outside_shoe(friction=0.3, width=2, radius=10, pivot=153**0.5, start=6, end=136,
    ...     arm=28, pressure=150, unit="in").value)
    15425
    """
    if pivot <= radius:
        rule = f"must be more than the radius of the drum, {radius:g} {unit}"
        raise NotPossible(f"pivot {pivot:g} {unit}", rule, "look whether the two are swapped")
    shoe = Shoe(friction, width, radius, pivot, start, end)
    how = Pressed(arm, pressure, force, turning, tilt)
    return one_shoe(shoe, how, outside=True, unit=unit)
