from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--api 36")
def api_gravity(
    *,
    api: Annotated[float, Of("", least=-2, most=220)] | None = None,
    specific_gravity: Annotated[float, Of("sg", least=0.4, most=1.1)] | None = None,
) -> Worked[float]:
    """Specific gravity of a fuel from its degrees API, or the other way round.

    Both are for fuel at 60 °F; textbooks take the specific gravity as the density in g/cc.

    api: degrees API as a hydrometer shows them at 60 °F, no unit.
    specific_gravity: at 60 °F against water at 60 °F, in sg.
    Raises NotPossible where not exactly one of the two is given.
    Source: American Petroleum Institute, definition, G = 141.5/(131.5 + API); water at 60 °F is
    0.999016 g/cc.

    >>> round(api_gravity(api=32).value, 5)
    0.86544
    """
    if (api is None) == (specific_gravity is None):
        raise NotPossible("api and specific gravity", "lead to each other", "give one of the two")
    w = Working()
    if api is not None:
        w.given("A", api, "", meaning="degrees API")
        gravity = w.step("G", "141.5/(131.5 + A)", 141.5 / (131.5 + api), "sg",
                         meaning="at 60 °F", answer="specific gravity")  # fmt: skip
    else:
        gravity = w.given("G", specific_gravity or 0.0, "sg", meaning="at 60 °F")
        w.step("A", "141.5/G − 131.5", 141.5 / gravity - 131.5, "", meaning="degrees API",
               answer="degrees api")  # fmt: skip
    w.step("ρ", "0.999016·G", 0.999016 * gravity, "g/cc", meaning="at 60 °F", answer="density")
    return Worked(gravity, w)
