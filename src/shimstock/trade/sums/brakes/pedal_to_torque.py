from collections.abc import Sequence
from math import prod
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._long_shoe import Angle, Friction, Length, Shoe, inside
from shimstock.trade.sums.brakes._two_shoes import pair
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST, SPRING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--pedal '60 lbf' --ratios '5; 4' --efficiency 80 --friction 0.3 --width '1 3/4 in' "
    "--radius '6 in' --pivot '4 3/4 in' --start 0 --end 120 --arm '8 1/2 in'",
    cautions=(BRAKES, LINING_DUST, SPRING),
)
def pedal_to_torque(
    *,
    pedal: Annotated[float, Of("force", above=0)],
    ratios: Annotated[Sequence[float], Of("", above=0)],
    friction: Friction,
    width: Length,
    radius: Length,
    pivot: Length,
    start: Angle,
    end: Angle,
    arm: Length,
    efficiency: Annotated[float, Of("%", above=0, most=100)] = 100,
    shared: Annotated[int, Of("", least=1)] = 2,
    unit: str = "mm",
) -> Worked[float]:
    """Torque of one drum brake from the force on its pedal, through the levers and the cam.

    Each lever multiplies by its long arm over its short one; a cam multiplies by its lever over
    the distance from its axis to the shoe's toe.

    pedal: force of the foot, in the force of `unit`.
    ratios: long arm over short arm of each lever from the pedal to the cam, no unit.
    friction: friction of the lining on the drum, no unit.
    width: width of one lining, in `unit`.
    radius: radius of the drum, in `unit`.
    pivot: from the centre of the drum to each hinge, in `unit`.
    start: from the hinge to where the lining begins, in deg.
    end: from the hinge to where the lining ends, in deg.
    arm: from the hinge square to the line of the force, in `unit`.
    efficiency: what the pins and the cam let through, in %.
    shared: shoes that share the force, two for each drum that the pedal works, a count.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where no ratio is given, the lining ends before it begins, the hinge lies
    outside the drum, or the leading shoe locks.
    Source: statics of levers; long internal shoe, J. E. Shigley, Mechanical Engineering Design,
    chapter 16, from memory.

    >>> round(pedal_to_torque(pedal=209, ratios=[5, 4], friction=0.32, width=40, radius=125,
    ...     pivot=100, start=0, end=120, arm=187.5).value)
    434860
    """
    units, w = coherent(unit), Working()
    w.given("P", pedal, units.force, meaning="force on the pedal")
    i = _all_levers(w, ratios)
    w.given("η", efficiency, "%", meaning="efficiency")
    w.given("n_s", shared, "", meaning="shoes that share the force")
    force = w.step("F", "P·i·η/100/n_s", pedal * i * efficiency / 100 / shared, units.force,
                   meaning="on each shoe", answer="force")  # fmt: skip
    shoe = inside(Shoe(friction, width, radius, pivot, start, end), unit)
    return Worked(pair(w, shoe, arm, pressure=None, force=force, unit=unit), w)


def _all_levers(w: Working, ratios: Sequence[float]) -> float:
    """What all levers multiply by together."""
    if not ratios:
        raise NotPossible("ratios", "names no lever", "type 1 where the pedal pushes straight")
    symbols = [f"i_{n}" for n in range(1, len(ratios) + 1)]
    for symbol, ratio in zip(symbols, ratios, strict=True):
        w.given(symbol, ratio, "", meaning="long arm over short arm")
    return w.step("i", "·".join(symbols), prod(ratios), "", meaning="all levers together")
