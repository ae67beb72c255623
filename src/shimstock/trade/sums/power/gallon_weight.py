from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--specific-gravity 0.84")
def gallon_weight(
    *, specific_gravity: Annotated[float, Of("sg", least=0.4, most=1.1)]
) -> Worked[float]:
    """Weight of a US gallon of fuel from its specific gravity at 60 °F against water at 60 °F.

    On a scale in air it weighs about a tenth of a per cent less, as the air carries it.

    specific_gravity: of the fuel at 60 °F, in sg.
    Source: definition; water at 60 °F is 0.999016 g/cc.

    >>> round(gallon_weight(specific_gravity=0.84).value, 3)
    7.003
    """
    w = Working()
    w.given("G", specific_gravity, "", meaning="specific gravity 60/60 °F")
    w.step("ρ_w", "0.999016·8.345404", 0.999016 * 8.345404, "lb/gal", meaning="water at 60 °F")
    weight = specific_gravity * 0.999016 * 8.345404
    w.step("ρ", "G·ρ_w", weight, "lb/gal", meaning="weight of a gallon", answer="weight")
    return Worked(weight, w)
