from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._grades import grade_of
from shimstock.trade.sums.oil._sae_j300 import SUMMER


@a_sum(example="--viscosity 11.2 --edition 1999", cautions=(USED_OIL,))
def engine_oil_grade(
    *,
    viscosity: Annotated[float, Of("mm2/s", above=0)],
    edition: Literal["1999", "2015"] = "2015",
) -> Worked[str]:
    """SAE J300 grade of an engine oil by its viscosity at 100 °C: 20, 30, 40, 50 or 60.

    The edition of 2015 has the thin grades 8, 12 and 16, which overlap. Its limits of thickness
    under shear are not looked at here.

    viscosity: viscosity at 100 °C, in mm2/s.
    edition: December 1999 or January 2015, no unit.
    Source: SAE J300, editions of December 1999 and January 2015; grades 8 to 16 from memory.

    >>> engine_oil_grade(viscosity=11.2).value
    '30'
    """
    w = Working()
    w.given("ν", viscosity, "mm2/s", meaning="at 100 °C")
    return Worked(grade_of(w, viscosity, SUMMER[edition], f"SAE J300 of {edition}"), w)
