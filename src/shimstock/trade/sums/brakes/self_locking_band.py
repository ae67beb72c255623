from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._band import grip
from shimstock.trade.sums.brakes._long_shoe import Friction
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.3 --wrap 270 --slack-arm '4 in' --tight-arm '1 in'", cautions=(BRAKES,)
)
def self_locking_band(
    *,
    friction: Friction,
    wrap: Annotated[float, Of("deg", least=10, most=1080)],
    slack_arm: Annotated[float, Of("length", above=0)],
    tight_arm: Annotated[float, Of("length", least=0)],
    unit: str = "mm",
) -> Worked[float]:
    """Whether a differential band brake grips by itself, and the tight arm at which it would.

    friction: friction of the band on the drum, no unit.
    wrap: angle of the drum that the band covers, in deg.
    slack_arm: from the fulcrum of the lever to the slack end of the band, in `unit`.
    tight_arm: from the fulcrum to the tight end, on the side where it helps, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: moments about the fulcrum with T_1/T_2 = e^(μ·φ): it locks where slack arm over tight
    arm is not above e^(μ·φ); V. B. Bhandari, Design of Machine Elements, example 12.10.

    >>> round(self_locking_band(friction=0.22, wrap=225, slack_arm=100, tight_arm=30).value, 2)
    42.15
    """
    w = Working()
    k = grip(w, friction, wrap)
    w.given("d_2", slack_arm, unit, meaning="arm of the slack end")
    w.given("d_1", tight_arm, unit, meaning="arm of the tight end")
    locks = w.step(
        "d_s", "d_2/k", slack_arm / k, unit,
        meaning="tight arm from which on it locks", answer="locking arm",
    )  # fmt: skip
    w.tell("self-locking", "yes" if tight_arm >= locks else "no")
    return Worked(locks, w)
