from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction '3 lbf' --sleeve-force '90 lbf' --ball-weight '15 lbf' --speed 975",
    cautions=(GOVERNOR,),
)
def insensitiveness(
    *,
    friction: Annotated[float, Of("N", least=0)],
    sleeve_force: Annotated[float, Of("N", above=0)],
    ball_weight: Annotated[float, Of("N", least=0)] = 0.0,
    speed: Annotated[float, Of("rpm", above=0)] | None = None,
) -> Worked[float]:
    """How far the speed must change before a stiff governor moves: one of the reasons to hunt.

    For friction that is little against what the sleeve carries.

    friction: force at the sleeve to move it either way, in N.
    sleeve_force: weight or spring that the sleeve carries, in N.
    ball_weight: weight of one ball, in N.
    speed: at which it stands, where the speeds are wanted, in rpm.
    Raises NotPossible where the friction is as much as what the sleeve carries.
    Source: Bevan, Theory of Machines, example 10, page 483, f/(W + w) for equal arms.

    >>> round(insensitiveness(friction=3, sleeve_force=90, ball_weight=15).value, 3)
    2.857
    """
    carried = sleeve_force + ball_weight
    if friction >= carried:
        rule = f"holds all that the sleeve carries, {carried:g} N: no speed is governed"
        raise NotPossible(f"friction {friction:g} N", rule, "free sleeve, pins and linkage first")
    w = Working()
    w.given("f", friction, "N", meaning="friction at the sleeve")
    w.given("W", sleeve_force, "N", meaning="carried by the sleeve")
    w.given("w", ball_weight, "N", meaning="weight of a ball")
    share = w.step("q", "100·f/(W + w)", 100 * friction / carried, "%",
                   meaning="of the speed", answer="share")  # fmt: skip
    if speed is not None:
        w.given("n", speed, "rpm", meaning="speed")
        half = w.step("Δn", "n·q/200", speed * share / 200, "rpm", meaning="to either side")
        w.step("n_1", "n − Δn", speed - half, "rpm", meaning="moves below", answer="below")
        w.step("n_2", "n + Δn", speed + half, "rpm", meaning="moves above", answer="above")
    return Worked(share, w)
