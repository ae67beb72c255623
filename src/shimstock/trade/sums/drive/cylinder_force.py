from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_OIL
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Forces:
    """Force going out and coming in, in the force of the sum's unit."""

    out: float
    back: float


@a_sum(example="--bore '3 in' --rod '1 1/4 in' --pressure '1200 psi'",
       cautions=(HIGH_PRESSURE_OIL,))  # fmt: skip
def cylinder_force(
    *,
    bore: Annotated[float, Of("length", above=0)],
    pressure: Annotated[float, Of("pressure", least=0)],
    rod: Annotated[float, Of("length", least=0)] = 0.0,
    unit: str = "mm",
) -> Worked[Forces]:
    """Force that a hydraulic cylinder gives under a pressure, going out and coming in.

    bore: of the cylinder, in `unit`.
    pressure: of the oil, in the pressure of `unit`.
    rod: diameter of the rod, in `unit`; 0 for a ram.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the rod is not thinner than the bore.
    Source: F = p·A, turned round from Esposito, Fluid Power with Applications, example 6.1.

    >>> got = cylinder_force(bore=2, pressure=318.31, rod=1, unit="in").value
    >>> round(got.out), round(got.back)
    (1000, 750)
    """
    if rod >= bore:
        rule = f"must be thinner than the bore, {bore:g} {unit}"
        raise NotPossible(f"rod {rod:g} {unit}", rule, "look whether the two are swapped")
    of = coherent(unit)
    w = Working()
    w.given("D", bore, unit, meaning="bore")
    w.given("d", rod, unit, meaning="rod")
    w.given("p", pressure, of.pressure, meaning="pressure")
    a_1, a_2 = pi / 4 * bore**2, pi / 4 * (bore**2 - rod**2)
    w.step("A_1", "π/4·D²", a_1, of.area, meaning="moving out")
    w.step("A_2", "π/4·(D² − d²)", a_2, of.area, meaning="moving in")
    out = w.step("F_1", "p·A_1", pressure * a_1, of.force, answer="force out")
    back = w.step("F_2", "p·A_2", pressure * a_2, of.force, answer="force in")
    return Worked(Forces(out, back), w)
