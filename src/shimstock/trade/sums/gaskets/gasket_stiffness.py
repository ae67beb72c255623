from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.cautions import OLD_GASKET
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--outside '30 mm' --inside '15 mm' --thickness '3 mm' --modulus '480 MPa' "
    "--bolt '15 mm' --grip '24 mm' --bolt-modulus '210 GPa'",
    cautions=(OLD_GASKET,),
)
def gasket_stiffness(
    *,
    outside: Annotated[float, Of("length", above=0)],
    inside: Annotated[float, Of("length", least=0)],
    thickness: Annotated[float, Of("length", above=0, found="gasket thickness")],
    modulus: Annotated[float, Of("pressure", above=0)],
    bolt: Annotated[float, Of("length", above=0)] | None = None,
    grip: Annotated[float, Of("length", above=0)] | None = None,
    bolt_modulus: Annotated[float, Of("pressure", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Stiffness of a ring of gasket, and of the bolt through it, and how they share a load.

    outside: outside diameter of the gasket that a bolt presses, in `unit`.
    inside: hole in it, in `unit`.
    thickness: thickness of the gasket, in `unit`.
    modulus: modulus of the gasket, in the pressure of `unit`.
    bolt: diameter of the bolt, in `unit`.
    grip: length of bolt that stretches, in `unit`.
    bolt_modulus: modulus of the bolt, in the pressure of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the hole is not smaller than the outside, or one of the bolt's three
    values is missing.
    Source: k = A·E/t; U. C. Jindal, Machine Design, example 5-5.

    >>> round(gasket_stiffness(outside=30, inside=15, thickness=3, modulus=480).value)
    84823
    """
    if inside >= outside:
        rule = f"must be less than the outside, {outside:g} {unit}"
        raise NotPossible(f"inside {inside:g} {unit}", rule, "look whether the two are swapped")
    for name, value in (("bolt", bolt), ("grip", grip), ("bolt modulus", bolt_modulus)):
        goes_with(name, value, "bolt", bolt)
        goes_with(name, value, "grip", grip)
        goes_with(name, value, "bolt modulus", bolt_modulus)
    units, w = coherent(unit), Working()
    w.given("D", outside, unit, meaning="outside of the gasket")
    w.given("d", inside, unit, meaning="hole in it")
    w.given("t", thickness, unit, meaning="thickness")
    w.given("E_g", modulus, units.pressure, meaning="modulus of the gasket")
    area = w.step("A_g", "π/4·(D² − d²)", pi / 4 * (outside**2 - inside**2), units.area)
    gasket = w.step("k_g", "A_g·E_g/t", area * modulus / thickness, units.rate, answer="gasket")
    if bolt is not None and grip is not None and bolt_modulus is not None:
        _shared(w, gasket, bolt, grip, bolt_modulus, unit)
    return Worked(gasket, w)


def _shared(w: Working, gasket: float, bolt: float, grip: float, modulus: float, unit: str) -> None:
    """The bolt's stiffness, and the share of an outside load that it takes."""
    units = coherent(unit)
    w.given("d_b", bolt, unit, meaning="diameter of the bolt")
    w.given("l", grip, unit, meaning="length that stretches")
    w.given("E_b", modulus, units.pressure, meaning="modulus of the bolt")
    area = w.step("A_b", "π/4·d_b²", pi / 4 * bolt**2, units.area)
    k_b = w.step("k_b", "A_b·E_b/l", area * modulus / grip, units.rate, answer="bolt")
    w.step("C", "k_b/(k_b + k_g)", k_b / (k_b + gasket), "",
           meaning="share of an outside load that the bolt takes", answer="share")  # fmt: skip
