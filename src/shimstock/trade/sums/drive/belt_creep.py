from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--tight '500 lbf' --slack '200 lbf' --width '6 in' --thickness '1/4 in' "
       "--modulus '15000 psi'", cautions=(RUNNING,))  # fmt: skip
def belt_creep(
    *,
    tight: Annotated[float, Of("force", above=0)],
    slack: Annotated[float, Of("force", above=0)],
    width: Annotated[float, Of("length", above=0)],
    thickness: Annotated[float, Of("length", above=0)],
    modulus: Annotated[float, Of("pressure", above=0)],
    unit: str = "mm",
) -> Worked[float]:
    """Speed that a stretching belt loses though it does not slip.

    tight: pull of the tight side, in the force of `unit`.
    slack: pull of the slack side, in the force of `unit`.
    width: of the belt, in `unit`.
    thickness: of the belt, in `unit`.
    modulus: of elasticity of the belt, in the pressure of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the slack side pulls harder.
    Source: v_2/v_1 = (1 + σ_2/E)/(1 + σ_1/E), for the same weight of belt passes both pulleys;
    from memory. A form with √(σ/E), printed in some books, is not used.

    >>> round(belt_creep(tight=2000, slack=800, width=100, thickness=6, modulus=100).value, 2)
    1.94
    """
    if slack > tight:
        rule = f"cannot pull harder than the tight side, {tight:g}"
        raise NotPossible(f"slack side {slack:g}", rule, "look whether the two are swapped")
    of = coherent(unit)
    w = Working()
    w.given("T_1", tight, of.force, meaning="tight side")
    w.given("T_2", slack, of.force, meaning="slack side")
    w.given("b", width, unit, meaning="width")
    w.given("t", thickness, unit, meaning="thickness")
    w.given("E", modulus, of.pressure, meaning="modulus of the belt")
    area = width * thickness
    first = w.step("σ_1", "T_1/(b·t)", tight / area, of.pressure, meaning="stress, tight")
    second = w.step("σ_2", "T_2/(b·t)", slack / area, of.pressure, meaning="stress, slack")
    lost = 100 * (1 - (1 + second / modulus) / (1 + first / modulus))
    w.step("c", "100·(1 − (1 + σ_2/E)/(1 + σ_1/E))", lost, "%", meaning="lost", answer="creep")
    return Worked(lost, w)
