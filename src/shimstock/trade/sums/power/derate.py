from collections.abc import Sequence
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--power '38 hp' --losses '12, 5'")
def derate(
    *,
    power: Annotated[float, Of("hp", above=0)],
    losses: Annotated[Sequence[float], Of("%", least=0, below=100)],
    together: Literal["multiplied", "added"] = "multiplied",
) -> Worked[float]:
    """Power left after several losses, such as those for altitude, heat and accessories.

    Books differ: factors for altitude and temperature are multiplied, single losses are often
    added. Take the way of the book that the losses come from.

    power: before the losses, in hp.
    losses: each loss, in %.
    together: whether what is left is multiplied, or the losses are added, no unit.
    Raises NotPossible where no loss is given or nothing would be left.
    Source: multiplied: Handbook of Energy Engineering Calculations, page 202; added: Introduction
    to Agricultural Engineering Technology, power problems.

    >>> round(derate(power=800, losses=[32, 5]).value, 1)
    516.8
    """
    if not losses:
        raise NotPossible("losses", "must hold one loss at least", "type them as: 12, 5")
    w = Working()
    w.given("P", power, "hp", meaning="power before")
    names = [f"x_{i}" for i in range(1, len(losses) + 1)]
    for name, loss in zip(names, losses, strict=True):
        w.given(name, loss, "%", meaning="loss")
    left = 1.0
    if together == "added":
        left, shown = 1 - sum(losses) / 100, f"1 − ({' + '.join(names)})/100"
    else:
        for loss in losses:
            left *= 1 - loss / 100
        shown = "·".join(f"(1 − {name}/100)" for name in names)
    if left <= 0:
        rule = f"come to {sum(losses):g} % and leave nothing"
        raise NotPossible("the losses added", rule, "look whether they are to be multiplied")
    w.step("y", shown, left, "", meaning="share left", answer="share left")
    result = w.step("P_y", "P·y", power * left, "hp", meaning="power left", answer="power")
    return Worked(result, w)
