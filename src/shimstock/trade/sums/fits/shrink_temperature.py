from typing import Annotated, Literal

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT, SOLVENT_HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST, can_be, within
from shimstock.trade.sums.freeing._metals import SPREAD_SAID, MetalText, metal_line


@a_sum(
    example="--interference '0.05 mm' --diameter '75 mm' --metal steel --clearance '0.05 mm'",
    cautions=(HEAT, SOLVENT_HEAT),
)
def shrink_temperature(
    *,
    interference: Annotated[float, Of("length", above=0)],
    diameter: Annotated[float, Of("length", above=0)],
    metal: MetalText,
    clearance: Annotated[float, Of("length", least=0)] = 0,
    way: Literal["heat the hub", "cool the shaft"] = "heat the hub",
    limit: Annotated[float, Of("degC", least=COLDEST)] | None = None,
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    unit: str = "mm",
) -> Worked[float]:
    """Temperature that lets a shrink fit slip together: the hub heated, or the shaft cooled.

    interference: how much the shaft is larger than the hub's bore, on the diameter, in `unit`.
    diameter: bore of the hub that is heated, or diameter of the shaft that is cooled, in `unit`.
    metal: what the part heated or cooled is of, by name, or its growth such as 12 um/m.K.
    clearance: clearance wanted while it slips on, in `unit`.
    way: what is done.
    limit: hottest, or coldest, that the part may have, in degC.
    start: temperature of the room, in degC.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where no cold is enough.
    Source: ΔT = (δ + c)/(α·D), the part growing by itself; α as the working names it.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> round(shrink_temperature(interference=0.002, diameter=2.5,
    ...     metal=parse_metal("12 um/m.K"), unit="in").value)
    87
    """
    unit = coherent(unit).length
    chilled = way == "cool the shaft"
    w = Working()
    w.given("δ", interference, unit, meaning="interference on the diameter")
    w.given("c", clearance, unit, meaning="clearance while it slips on")
    w.given("D", diameter, unit, meaning="shaft" if chilled else "bore of the hub")
    growth = metal_line(w, "α", metal, "shaft" if chilled else "hub")
    w.given("T_0", start, "degC", meaning="room")
    change = (interference + clearance) / (growth / 1e6 * diameter)
    w.step("ΔT", "(δ + c)/(α/10⁶·D)", change, "K", answer="cooling" if chilled else "warming")
    at = start - change if chilled else start + change
    w.step("T", "T_0 − ΔT" if chilled else "T_0 + ΔT", at, "degC", answer="temperature")
    can_be(at, "heat the hub instead, or both")
    within(w, at, limit, chilled)
    if metal.spread:
        w.note(SPREAD_SAID)
    return Worked(at, w)
