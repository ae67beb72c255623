from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._band import grip
from shimstock.trade.sums.brakes._long_shoe import Friction, Length
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.3 --wrap 270 --radius '5 in' --slack-arm '3 in' --lever '15 in' "
    "--pull '40 lbf'",
    cautions=(BRAKES, LINING_DUST),
)
def band_brake(
    *,
    friction: Friction,
    wrap: Annotated[float, Of("deg", least=10, most=1080)],
    radius: Length,
    slack_arm: Annotated[float, Of("length", above=0)],
    lever: Length,
    tight_arm: Annotated[float, Of("length", least=0)] = 0,
    pull: Annotated[float, Of("force", above=0)] | None = None,
    tight: Annotated[float, Of("force", above=0)] | None = None,
    torque: Annotated[float, Of("torque", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Tensions, torque and pull at the lever of a band brake, simple or differential.

    Give one of pull, tight and torque; the other two come out.

    friction: friction of the band on the drum, no unit.
    wrap: angle of the drum that the band covers, in deg.
    radius: radius of the drum, in `unit`.
    slack_arm: from the fulcrum of the lever to the slack end of the band, in `unit`.
    lever: from the fulcrum to where the lever is pulled, in `unit`.
    tight_arm: from the fulcrum to the tight end, on the side where it helps; 0 where the tight
        end is anchored, in `unit`.
    pull: pull at the end of the lever, in the force of `unit`.
    tight: tension of the tight end, in the force of `unit`.
    torque: torque on the drum, in the torque of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where not exactly one of pull, tight and torque is given, or a pull is asked
    of a band that grips by itself.
    Source: T_1/T_2 = e^(μ·φ) and moments about the fulcrum; V. B. Bhandari, Design of Machine
    Elements, example 12.10.

    >>> round(band_brake(friction=0.25, wrap=240, radius=300, slack_arm=200, tight_arm=50,
    ...     lever=950, tight=15000).value)
    2920861
    """
    _one_of_three(pull, tight, torque)
    units, w = coherent(unit), Working()
    k = grip(w, friction, wrap)
    w.given("r", radius, unit, meaning="radius of the drum")
    w.given("d_2", slack_arm, unit, meaning="arm of the slack end")
    w.given("d_1", tight_arm, unit, meaning="arm of the tight end")
    w.given("l", lever, unit, meaning="arm of the pull")
    net = w.step("d", "d_2 − d_1·k", slack_arm - tight_arm * k, unit)
    w.tell("self-locking", "yes" if net <= 0 else "no")
    slack = _slack(w, k, net, radius, lever, pull=pull, tight=tight, torque=torque, unit=unit)
    if tight is None:
        tight = w.step("T_1", "T_2·k", slack * k, units.force, answer="tight tension")
    if pull is None:
        w.step("P", "T_2·d/l", slack * net / lever, units.force, answer="pull")
    if torque is None:
        gained = w.step("U", "T_1 − T_2", tight - slack, units.force, meaning="at the drum's rim")
        torque = w.step("M", "U·r", gained * radius, units.torque, answer="torque")
    return Worked(torque, w)


def _one_of_three(pull: float | None, tight: float | None, torque: float | None) -> None:
    given = sum(each is not None for each in (pull, tight, torque))
    if given != 1:
        what = f"{given} of pull, tight and torque"
        raise NotPossible(what, "leave the sum open or over-full", "give one of the three")


def _slack(
    w: Working,
    k: float,
    net: float,
    radius: float,
    lever: float,
    *,
    pull: float | None,
    tight: float | None,
    torque: float | None,
    unit: str,
) -> float:
    """Tension of the slack end from the one thing that is known."""
    units = coherent(unit)
    if tight is not None:
        w.given("T_1", tight, units.force, meaning="tension of the tight end")
        return w.step("T_2", "T_1/k", tight / k, units.force, answer="slack tension")
    if torque is not None:
        w.given("M", torque, units.torque, meaning="torque on the drum")
        gained = w.step("U", "M/r", torque / radius, units.force, meaning="at the drum's rim")
        more = w.step("k_1", "k − 1", k - 1, "")
        return w.step("T_2", "U/k_1", gained / more, units.force, answer="slack tension")
    assert pull is not None, "one of the three is given"
    if net <= 0:
        would = "move the tight end nearer to the fulcrum, or give the torque"
        raise NotPossible("the band", "grips by itself whatever the pull", would)
    w.given("P", pull, units.force, meaning="pull at the lever")
    return w.step("T_2", "P·l/d", pull * lever / net, units.force, answer="slack tension")
