from typing import Annotated

from shimstock.trade.numbers.working import Worked
from shimstock.trade.sums.brakes._long_shoe import Angle, Friction, Length, Shoe, inside
from shimstock.trade.sums.brakes._two_shoes import two_shoes
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST, SPRING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.3 --width '1 3/4 in' --radius '6 in' --pivot '4 3/4 in' --start 0 "
    "--end 120 --arm '8 1/2 in' --force '500 lbf'",
    cautions=(BRAKES, LINING_DUST, SPRING),
)
def two_shoe_brake(
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
    tilt: Annotated[float, Of("deg", least=-90, most=90)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Torque of a drum brake with a leading and a trailing shoe that are pushed equally hard.

    Give the largest pressure, which the leading shoe has, or the force on each shoe. A fixed cam
    pushes both shoes equally far, not equally hard; then the trailing shoe does more than here.

    friction: friction of the lining on the drum, no unit.
    width: width of one lining, in `unit`.
    radius: radius of the drum, in `unit`.
    pivot: from the centre of the drum to each hinge, in `unit`.
    start: from the hinge to where the lining begins, in deg.
    end: from the hinge to where the lining ends, in deg.
    arm: from the hinge square to the line of the force, in `unit`.
    pressure: largest pressure on the leading lining, in the pressure of `unit`.
    force: force on each shoe, in the force of `unit`.
    tilt: lean of the force from square to the line to the hinge, for its reaction, in deg.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the lining ends before it begins, the hinge lies outside the drum, not
    exactly one of pressure and force is given, or the leading shoe locks.
    Source: long internal shoe, J. E. Shigley, Mechanical Engineering Design, chapter 16, from
    memory; V. B. Bhandari, Design of Machine Elements, section 12.

    >>> round(two_shoe_brake(friction=0.32, width=40, radius=125, pivot=100, start=0, end=120,
    ...     arm=187.5, pressure=1).value)
    434834
    """
    shoe = inside(Shoe(friction, width, radius, pivot, start, end), unit)
    return two_shoes(shoe, arm, pressure=pressure, force=force, tilt=tilt, unit=unit)
