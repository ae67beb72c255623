from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Transfer:
    """Load moved to the rear axle, load left on the front, and the pull that lifts it: forces."""

    moved: float
    front: float
    lifting: float


@a_sum(
    example="--pull '2000 lbf' --hitch-height '18 in' --wheelbase '87 in' --front '2090 lbf'",
    cautions=(ROLLOVER,),
)
def weight_transfer(
    *,
    pull: Annotated[float, Of("force", least=0)],
    hitch_height: Annotated[float, Of("length", above=0)],
    wheelbase: Annotated[float, Of("length", above=0, found="wheelbase")],
    front: Annotated[float, Of("force", above=0)],
    unit: str = "mm",
) -> Worked[Transfer]:
    """Load that a level pull moves from the front axle to the rear, and the pull that lifts it.

    The pull that lifts the front is a limit never to be approached: the clutch can pass it at once.

    pull: at the hitch, level, in the force of `unit`.
    hitch_height: of the hitch above the ground, in `unit`.
    wheelbase: front axle to rear axle, in `unit`.
    front: load on the front axle at rest, in the force of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the hitch is as high as the wheelbase is long.
    Source: statics, moments about where the rear wheels stand, ΔR = P·h/L.

    >>> round(weight_transfer(pull=10000, hitch_height=500, wheelbase=2000, front=9000).value.moved)
    2500
    """
    if hitch_height >= wheelbase:
        rule = f"is not below the wheelbase, {wheelbase:g} {unit}"
        raise NotPossible(f"hitch height {hitch_height:g} {unit}", rule, "look at its unit")
    of = coherent(unit)
    w = Working()
    w.given("P", pull, of.force, meaning="pull at the hitch")
    w.given("h", hitch_height, unit, meaning="height of the hitch")
    w.given("L", wheelbase, unit, meaning="wheelbase")
    w.given("R_f", front, of.force, meaning="front axle at rest")
    moved = pull * hitch_height / wheelbase
    w.step("ΔR", "P·h/L", moved, of.force, meaning="moved to the rear", answer="moved")
    left = max(0.0, front - moved)
    meaning = "left in front"
    w.step("R_f'", "max(0, R_f − ΔR)", left, of.force, meaning=meaning, answer="front axle")
    lifting = front * wheelbase / hitch_height
    meaning = "would lift the front"
    w.step("P_0", "R_f·L/h", lifting, of.force, meaning=meaning, answer="lifting pull")
    w.tell("front lifts", "yes" if moved >= front else "no")
    return Worked(Transfer(moved, left, lifting), w)
