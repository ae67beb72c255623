from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST
from shimstock.trade.sums.freeing._metals import MetalText, metal_line


@a_sum(
    example="--rod '20 mm' --inside '40 mm' --outside '50 mm' --rod-metal steel "
    "--tube-metal copper --rod-modulus '200 GPa' --tube-modulus '100 GPa' --end '70 degC'",
    cautions=(HEAT,),
)
def tube_and_rod(
    *,
    rod: Annotated[float, Of("length", above=0)],
    inside: Annotated[float, Of("length", above=0)],
    outside: Annotated[float, Of("length", above=0)],
    rod_metal: MetalText,
    tube_metal: MetalText,
    rod_modulus: Annotated[float, Of("pressure", above=0)],
    tube_modulus: Annotated[float, Of("pressure", above=0)],
    end: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))],
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    unit: str = "mm",
) -> Worked[float]:
    """Stress in a rod and the tube around it, fixed to each other at both ends and heated alike.

    So is a long bolt through a sleeve, or a stud through an aluminium head.

    rod: diameter of the rod, in `unit`.
    inside: inside diameter of the tube, in `unit`.
    outside: outside diameter of the tube, in `unit`.
    rod_metal: what the rod is of, by name, or its growth such as 12 um/m.K.
    tube_metal: what the tube is of, by name, or its growth such as 18 um/m.K.
    rod_modulus: modulus of the rod, in the pressure of `unit`.
    tube_modulus: modulus of the tube, in the pressure of `unit`.
    end: temperature both are brought to, in degC.
    start: temperature at which both were without stress, in degC.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the rod does not lie inside the tube.
    Source: F = (α_t − α_r)·ΔT/(1/(A_t·E_t) + 1/(A_r·E_r)), as R. K. Bansal, Strength of Materials,
    example 1.30.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> steel, copper = parse_metal("12 um/m.K"), parse_metal("18 um/m.K")
    >>> got = tube_and_rod(rod=20, inside=40, outside=50, rod_metal=steel, tube_metal=copper,
    ...     rod_modulus=2e5, tube_modulus=1e5, end=70).working.answers
    >>> round(got["rod stress"].value, 2), got["the rod is"].value
    (31.76, 'pulled')
    """
    units = coherent(unit)
    _nested(rod, inside, outside, units.length)
    w = Working()
    w.given("d", rod, units.length, meaning="rod")
    w.given("D_i", inside, units.length, meaning="tube inside")
    w.given("D_o", outside, units.length, meaning="tube outside")
    a_r = metal_line(w, "α_r", rod_metal, "rod")
    a_t = metal_line(w, "α_t", tube_metal, "tube")
    w.given("E_r", rod_modulus, units.pressure, meaning="rod")
    w.given("E_t", tube_modulus, units.pressure, meaning="tube")
    w.given("T_0", start, "degC", meaning="without stress")
    w.given("T", end, "degC", meaning="end")
    rise = w.step("ΔT", "T − T_0", end - start, "K")
    s_r = w.step("A_r", "π/4·d²", pi / 4 * rod**2, units.area)
    s_t = w.step("A_t", "π/4·(D_o² − D_i²)", pi / 4 * (outside**2 - inside**2), units.area)
    apart = w.step("ε", "(α_t − α_r)/10⁶·ΔT", (a_t - a_r) / 1e6 * rise, "", meaning="would differ")
    force = apart / (1 / (s_t * tube_modulus) + 1 / (s_r * rod_modulus))
    w.step("F", "ε/(1/(A_t·E_t) + 1/(A_r·E_r))", force, units.force, answer="force")
    pull = w.step("σ_r", "|F|/A_r", abs(force) / s_r, units.pressure, answer="rod stress")
    w.step("σ_t", "|F|/A_t", abs(force) / s_t, units.pressure, answer="tube stress")
    w.tell("the rod is", "pulled" if force > 0 else "pressed" if force < 0 else "free")
    return Worked(pull, w)


def _nested(rod: float, inside: float, outside: float, unit: str) -> None:
    if rod > inside:
        rule = f"must go into the tube, {inside:g} {unit} inside"
        raise NotPossible(f"rod {rod:g} {unit}", rule, "measure both again")
    if inside >= outside * (1 - 1e-4):
        rule = f"must be smaller than its outside, {outside:g} {unit}"
        raise NotPossible(f"inside of the tube {inside:g} {unit}", rule, "look whether swapped")
