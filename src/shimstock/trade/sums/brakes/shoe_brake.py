from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked
from shimstock.trade.sums.brakes._long_shoe import Angle, Friction, Length, Shoe, inside
from shimstock.trade.sums.brakes._one_shoe import Pressed, one_shoe
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST, SPRING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.32 --width '1 1/2 in' --radius '5 in' --pivot '4 in' --start 0 --end 120 "
    "--arm '7 1/2 in' --force '450 lbf'",
    cautions=(BRAKES, LINING_DUST, SPRING),
)
def shoe_brake(
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
    """Torque of one long brake shoe inside a drum, from its lining pressure or from the force.

    Give either the largest pressure or the force that spreads the shoe; the other comes out.

    friction: friction of the lining on the drum, no unit.
    width: width of the lining, in `unit`.
    radius: radius of the drum, in `unit`.
    pivot: from the centre of the drum to the hinge, in `unit`.
    start: from the hinge to where the lining begins, in deg.
    end: from the hinge to where the lining ends, in deg.
    arm: from the hinge square to the line of the force, in `unit`.
    pressure: largest pressure on the lining, in the pressure of `unit`.
    force: force that spreads the shoe, in the force of `unit`.
    turning: whether the drum runs from toe to hinge (leading) or from hinge to toe, no unit.
    tilt: lean of the force from square to the line to the hinge, for its reaction, in deg.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the lining ends before it begins, the hinge lies outside the drum, not
    exactly one of pressure and force is given, or a force is asked of a shoe that locks.
    Source: long internal shoe, J. E. Shigley, Mechanical Engineering Design, chapter 16, from
    memory; V. B. Bhandari, Design of Machine Elements, section 12.

    >>> round(shoe_brake(friction=0.32, width=40, radius=125, pivot=100, start=0, end=120,
    ...     arm=187.5, pressure=1).value)
    300000
    """
    shoe = inside(Shoe(friction, width, radius, pivot, start, end), unit)
    how = Pressed(arm, pressure, force, turning, tilt)
    return one_shoe(shoe, how, outside=False, unit=unit)
