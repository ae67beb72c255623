from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COLD, HEAT, SOLVENT_HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST, can_be
from shimstock.trade.sums.freeing._metals import MetalText, metal_line


@a_sum(
    example="--shaft '2.5020 in' --ring '2.5000 in' --shaft-metal brass --ring-metal steel",
    cautions=(HEAT, SOLVENT_HEAT, COLD),
)
def loosening_temperature(
    *,
    shaft: Annotated[float, Of("length", above=0)],
    ring: Annotated[float, Of("length", above=0)],
    shaft_metal: MetalText,
    ring_metal: MetalText,
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    unit: str = "mm",
) -> Worked[float]:
    """Temperature of both parts together at which a shrunk ring comes loose from its shaft.

    Both are cooled where the shaft grows more with heat, both are heated where the ring does.

    shaft: diameter of the shaft at the start, in `unit`.
    ring: bore of the ring by itself at the start, in `unit`.
    shaft_metal: what the shaft is of, by name, or its growth such as 19 um/m.K.
    ring_metal: what the ring is of, by name, or its growth such as 12 um/m.K.
    start: temperature at which both were measured, in degC.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the ring is loose already, or both grow alike.
    Source: ΔT = δ/(D_s·α_s − D_r·α_r), each part growing by itself; α as the working names it.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> brass, steel = parse_metal("19 um/m.K"), parse_metal("12 um/m.K")
    >>> round(loosening_temperature(shaft=2.502, ring=2.5, shaft_metal=brass,
    ...     ring_metal=steel, unit="in").value)
    -94
    """
    unit = coherent(unit).length
    if ring >= shaft:
        rule = f"is not smaller than the shaft, {shaft:g} {unit}: it is loose already"
        raise NotPossible(f"ring {ring:g} {unit}", rule, "look whether the two are swapped")
    w = Working()
    w.given("D_s", shaft, unit, meaning="shaft")
    w.given("D_r", ring, unit, meaning="ring by itself")
    a_s = metal_line(w, "α_s", shaft_metal, "shaft")
    a_r = metal_line(w, "α_r", ring_metal, "ring")
    w.given("T_0", start, "degC", meaning="both at the start")
    delta = w.step("δ", "D_s − D_r", shaft - ring, unit, meaning="interference")
    rate = shaft * a_s / 1e6 - ring * a_r / 1e6
    w.step("r", "D_s·α_s/10⁶ − D_r·α_r/10⁶", rate, f"{unit}/K", meaning="lost a degree of cooling")
    if abs(rate) < 1e-9 * shaft * a_s / 1e6:
        raise NotPossible("both parts", "grow alike and never part", "heat the ring alone")
    fall = w.step("ΔT", "δ/r", delta / rate, "K", meaning="both colder by", answer="cooling")
    at = w.step("T", "T_0 − ΔT", start - fall, "degC", answer="temperature")
    w.tell("way", "cool both" if fall > 0 else "heat both")
    can_be(at, "heat the ring alone instead")
    return Worked(at, w)
