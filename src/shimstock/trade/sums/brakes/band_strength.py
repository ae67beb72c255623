from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--width '2 in' --thickness '1/16 in' --stress '7000 psi'", cautions=(BRAKES,))
def band_strength(
    *,
    width: Annotated[float, Of("length", above=0)],
    thickness: Annotated[float, Of("length", above=0)],
    stress: Annotated[float, Of("pressure", above=0)],
    unit: str = "mm",
) -> Worked[float]:
    """Largest tension that the steel of a brake band may carry.

    Take the width less the rivet holes that lie side by side.

    width: width of the steel left beside the rivet holes, in `unit`.
    thickness: thickness of the steel without its lining, in `unit`.
    stress: tensile stress that the steel may have, in the pressure of `unit`.
    unit: unit of the lengths, mm or in.
    Source: tension is stress times area; V. B. Bhandari, Design of Machine Elements, example 12.10.

    >>> band_strength(width=100, thickness=3, stress=50).value
    15000
    """
    units, w = coherent(unit), Working()
    w.given("b", width, unit, meaning="width of the steel")
    w.given("t", thickness, unit, meaning="thickness of the steel")
    w.given("σ", stress, units.pressure, meaning="stress allowed")
    tension = w.step("T_1", "σ·b·t", stress * width * thickness, units.force, answer="tension")
    return Worked(tension, w)
