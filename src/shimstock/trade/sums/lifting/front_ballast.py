from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum

Length = Annotated[float, Of("mm", above=0)]


@dataclass(frozen=True)
class Ballast:
    """Least ballast at the front, and the front axle's load with it, in kg."""

    least: float
    front: float


@a_sum(
    example="--weight '5500 lb' --front '2090 lb' --implement '2200 lb' --front-arm '47 in' "
    "--wheelbase '87 in' --hitch '39 in' --overhang '24 in'",
    cautions=(ROLLOVER, BOOK_FIRST),
)
def front_ballast(
    *,
    weight: Annotated[float, Of("kg", above=0, found="weight")],
    front: Annotated[float, Of("kg", least=0)],
    implement: Annotated[float, Of("kg", least=0)],
    front_arm: Length,
    wheelbase: Annotated[float, Of("mm", above=0, found="wheelbase")],
    hitch: Length,
    overhang: Annotated[float, Of("mm", least=0)] = 0.0,
    share: Annotated[float, Of("%", least=0, most=50)] = 20.0,
) -> Worked[Ballast]:
    """Least ballast at the front for an implement behind, so that the front axle can still steer.

    weight: of the empty tractor, in kg.
    front: on its front axle empty, in kg.
    implement: behind, in kg.
    front_arm: front axle to the centre of the front ballast, in mm.
    wheelbase: front axle to rear axle, in mm.
    hitch: rear axle to the hitch points, in mm.
    overhang: hitch points to the implement's centre of gravity, in mm.
    share: of the empty weight that must stay on the front axle, in %.
    Raises NotPossible where the front axle weighs more than the tractor.
    Source: formula of implement makers' manuals, front axle at least 20 % of the empty weight.

    >>> got = front_ballast(weight=2500, front=950, implement=1000, front_arm=1200, wheelbase=2200,
    ...     hitch=1000, overhang=600).value
    >>> round(got.least, 2), round(got.front, 1)
    (179.41, 500.0)
    """
    if front > weight:
        rule = f"cannot be more than the whole, {weight:g} kg"
        raise NotPossible(f"front {front:g} kg", rule, "look whether they are swapped")
    w = Working()
    w.given("T_L", weight, "kg", meaning="empty weight")
    w.given("T_v", front, "kg", meaning="front axle, empty")
    w.given("G_h", implement, "kg", meaning="implement")
    w.given("a", front_arm, "mm", meaning="front axle to front ballast")
    w.given("b", wheelbase, "mm", meaning="wheelbase")
    w.given("c", hitch, "mm", meaning="rear axle to hitch")
    w.given("d", overhang, "mm", meaning="hitch to the implement's weight")
    w.given("s", share, "%", meaning="must stay on the front axle")
    moment = implement * (hitch + overhang) - front * wheelbase
    moment += share / 100 * weight * wheelbase
    needed = moment / (front_arm + wheelbase)
    w.step("G_v", "(G_h·(c + d) − T_v·b + s/100·T_L·b)/(a + b)", needed, "kg", meaning="ballast")
    least = w.step("G", "max(0, G_v)", max(0.0, needed), "kg", answer="least ballast")
    on_front = (least * (front_arm + wheelbase) + front * wheelbase) / wheelbase
    on_front -= implement * (hitch + overhang) / wheelbase
    w.step("V", "(G·(a + b) + T_v·b)/b − G_h·(c + d)/b", on_front, "kg", answer="front axle")
    w.tell("needed", "yes" if needed > 0 else "no")
    return Worked(Ballast(least, on_front), w)
