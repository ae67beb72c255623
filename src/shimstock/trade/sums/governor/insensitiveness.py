from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import Speed


@dataclass(frozen=True)
class Dead:
    """Share of the speed in per cent through which nothing moves, and its ends in rpm."""

    share: float
    least: float
    most: float


@a_sum(example="--friction '3 lbf' --sleeve-force '90 lbf' --ball-weight '15 lbf' --speed 975")
def insensitiveness(
    *,
    friction: Annotated[float, Of("N", least=0)],
    sleeve_force: Annotated[float, Of("N", above=0)],
    ball_weight: Annotated[float, Of("N", least=0)] = 0.0,
    speed: Speed = 1000.0,
) -> Worked[Dead]:
    """How far the speed must change before a stiff governor moves: why it hunts.

    friction: force at the sleeve to move it either way, in N.
    sleeve_force: weight or spring that the sleeve carries, in N.
    ball_weight: weight of one ball, in N.
    speed: at which it stands, in rpm.
    Source: Bevan, Theory of Machines, example 10, page 483, f/(W + w) for equal arms.

    >>> round(insensitiveness(friction=3, sleeve_force=90, ball_weight=15).value.share, 3)
    2.857
    """
    w = Working()
    w.given("f", friction, "N", meaning="friction at the sleeve")
    w.given("W", sleeve_force, "N", meaning="carried by the sleeve")
    w.given("w", ball_weight, "N", meaning="weight of a ball")
    w.given("n", speed, "rpm", meaning="speed")
    share = w.step("q", "100·f/(W + w)", 100 * friction / (sleeve_force + ball_weight), "%",
                   meaning="of the speed", answer="share")  # fmt: skip
    half = w.step("Δn", "n·q/200", speed * share / 200, "rpm", meaning="to either side")
    least = w.step("n_1", "n − Δn", speed - half, "rpm", meaning="moves below", answer="below")
    most = w.step("n_2", "n + Δn", speed + half, "rpm", meaning="moves above", answer="above")
    return Worked(Dead(share, least, most), w)
