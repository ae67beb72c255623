from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PRESS
from shimstock.trade.sums.declare import Of, a_sum

SHORT_TON = 2000  # lbf


@a_sum(example="--diameter '3 in'", cautions=(PRESS,))
def force_fit_rule(
    *, diameter: Annotated[float, Of("in", above=0, most=20, known=(0, 9))]
) -> Worked[float]:
    """Press that a force fit of wheel or crank on its shaft wants, by the old shop rule.

    A rule of thumb for the size of the press, not for the fit: press-fit works out the fit itself.

    diameter: diameter of the shaft, in in.
    Source: Dooley, Applied Science for Metal Workers: 15·D + 15 tons, D in inches, up to about
    9 in; a ton is taken as 2000 lbf.

    >>> force_fit_rule(diameter=9).value
    150
    """
    w = Working()
    w.given("D", diameter, "in", meaning="diameter of the shaft")
    tons = w.step("P", "15·D + 15", 15 * diameter + 15, "tonf", answer="press")
    w.step("F", f"{SHORT_TON}·P", SHORT_TON * tons, "lbf", answer="force")
    return Worked(tons, w)
