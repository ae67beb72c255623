from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._grades import grade_of
from shimstock.trade.sums.oil._sae_j306 import GRADES


@a_sum(example="--viscosity 17 --edition 2019", cautions=(USED_OIL,))
def gear_oil_grade(
    *,
    viscosity: Annotated[float, Of("mm2/s", above=0)],
    edition: Literal["2019", "before 2005"] = "2019",
) -> Worked[str]:
    """SAE J306 grade of a gear oil by its viscosity at 100 °C.

    An old book's 90 is the wide grade of before 2005, which today is 90 or 110; its 140 is 140 or
    190. Whether the oil may touch bronze is another question: ask the oil's maker.

    viscosity: viscosity at 100 °C, in mm2/s.
    edition: of February 2019, or as the grades were before 2005, no unit.
    Source: SAE J306 of February 2019; the grades before 2005 from memory.

    >>> gear_oil_grade(viscosity=20).value, gear_oil_grade(viscosity=20,
    ...     edition="before 2005").value
    ('110', '90')
    """
    w = Working()
    w.given("ν", viscosity, "mm2/s", meaning="at 100 °C")
    return Worked(grade_of(w, viscosity, GRADES[edition], f"SAE J306, {edition}"), w)
