from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Transfer:
    """Load moved to the rear axle, load left on the front, both in N; pull that lifts it in N."""

    moved: float
    front: float
    lifting: float


@a_sum(
    example="--pull '2000 lbf' --hitch-height '18 in' --wheelbase '87 in' --front '2090 lbf'",
    cautions=(ROLLOVER,),
)
def weight_transfer(
    *,
    pull: Annotated[float, Of("N", least=0)],
    hitch_height: Annotated[float, Of("mm", above=0)],
    wheelbase: Annotated[float, Of("mm", above=0, found="wheelbase")],
    front: Annotated[float, Of("N", above=0)],
) -> Worked[Transfer]:
    """Load that a level pull moves from the front axle to the rear, and the pull that lifts it.

    The pull that lifts the front is a limit never to be approached: the clutch can pass it at once.

    pull: at the hitch, level, in N.
    hitch_height: of the hitch above the ground, in mm.
    wheelbase: front axle to rear axle, in mm.
    front: load on the front axle at rest, in N.
    Source: statics, moments about where the rear wheels stand, ΔR = P·h/L.

    >>> round(weight_transfer(pull=10000, hitch_height=500, wheelbase=2000, front=9000).value.moved)
    2500
    """
    w = Working()
    w.given("P", pull, "N", meaning="pull at the hitch")
    w.given("h", hitch_height, "mm", meaning="height of the hitch")
    w.given("L", wheelbase, "mm", meaning="wheelbase")
    w.given("R_f", front, "N", meaning="front axle at rest")
    moved = pull * hitch_height / wheelbase
    w.step("ΔR", "P·h/L", moved, "N", meaning="moved to the rear", answer="moved")
    left = w.step("R_f'", "max(0, R_f − ΔR)", max(0.0, front - moved), "N", meaning="left in front",
                  answer="front axle")  # fmt: skip
    lifting = front * wheelbase / hitch_height
    w.step("P_0", "R_f·L/h", lifting, "N", meaning="would lift the front", answer="lifting pull")
    w.tell("front lifts", "yes" if moved >= front else "no")
    return Worked(Transfer(moved, left, lifting), w)
