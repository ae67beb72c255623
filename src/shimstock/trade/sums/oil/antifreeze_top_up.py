from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COOLANT
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--system '14 l' --have 22 --want 40", cautions=(COOLANT,))
def antifreeze_top_up(
    *,
    system: Annotated[float, Of("l", above=0, found="coolant capacity")],
    have: Annotated[float, Of("%", least=0, below=100)],
    want: Annotated[float, Of("%", above=0, most=100)],
    fresh: Annotated[float, Of("%", above=0, most=100)] = 100,
) -> Worked[float]:
    """Coolant to drain and to replace with antifreeze to bring a full system up to a share.

    system: what radiator, block and hoses hold, in l.
    have: share of antifreeze in it now, by volume, in %.
    want: share wanted, by volume, in %.
    fresh: share of antifreeze in what goes in, 100 where it is neat, in %.
    Raises NotPossible where the share wanted is not above what is there, or above what goes in.
    Source: balance of volumes, V·(want − have) = V_d·(fresh − have).

    >>> round(antifreeze_top_up(system=12, have=20, want=40).value, 6)
    3.0
    """
    if not have < want <= fresh:
        raise NotPossible(
            f"want {want:g} %",
            f"must be above have, {have:g} %, and not above fresh, {fresh:g} %",
            "to weaken it, drain and fill with water",
        )
    w = Working()
    w.given("V", system, "l", meaning="the system holds")
    w.given("p_h", have, "%", meaning="share now")
    w.given("p_w", want, "%", meaning="share wanted")
    w.given("p_f", fresh, "%", meaning="share of what goes in")
    more = w.step("D_w", "p_w − p_h", want - have, "%")
    most = w.step("D_f", "p_f − p_h", fresh - have, "%")
    drained = w.step("V_d", "V·D_w/D_f", system * more / most, "l",
                     meaning="drain this, fill with as much", answer="drain")  # fmt: skip
    return Worked(drained, w)
