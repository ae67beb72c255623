from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._long_shoe import (
    Angle,
    Friction,
    Length,
    Shoe,
    inside,
    per_pressure,
)
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import a_sum


@a_sum(
    example="--friction 0.35 --width '1 1/2 in' --radius '5 in' --pivot '4 in' --start 0 --end 120",
    cautions=(BRAKES,),
)
def self_locking_shoe(
    *,
    friction: Friction,
    width: Length,
    radius: Length,
    pivot: Length,
    start: Angle,
    end: Angle,
    unit: str = "mm",
) -> Worked[float]:
    """Whether a leading shoe inside a drum grips by itself, and at what friction it would.

    friction: friction of the lining on the drum, no unit.
    width: width of the lining, in `unit`.
    radius: radius of the drum, in `unit`.
    pivot: from the centre of the drum to the hinge, in `unit`.
    start: from the hinge to where the lining begins, in deg.
    end: from the hinge to where the lining ends, in deg.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the lining ends before it begins or the hinge lies outside the drum.
    Source: long internal shoe, J. E. Shigley, Mechanical Engineering Design, chapter 16, from
    memory: the shoe locks where the friction moment is not below the moment of the pressure.

    >>> self_locking_shoe(friction=0.32, width=40, radius=125, pivot=100, start=0,
    ...     end=120).working.answers["self-locking"].value
    'no'
    """
    w = Working()
    per = per_pressure(w, inside(Shoe(friction, width, radius, pivot, start, end), unit), unit)
    share = w.step(
        "q", "m_f/m_n", per.friction / per.normal, "",
        meaning="friction moment over moment of the pressure; locks from 1 up", answer="share",
    )  # fmt: skip
    w.step(
        "μ_s", "μ/q", friction / share, "",
        meaning="friction at which it would lock", answer="locking friction",
    )  # fmt: skip
    w.tell("self-locking", "yes" if share >= 1 else "no")
    return Worked(share, w)
