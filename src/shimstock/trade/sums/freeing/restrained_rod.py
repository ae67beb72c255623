from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST
from shimstock.trade.sums.freeing._metals import MetalText, metal_line


@a_sum(
    example="--length '2 m' --metal '12 um/m.K' --modulus '200 GPa' --start '95 degC' "
    "--end '30 degC' --diameter '30 mm'",
    cautions=(HEAT,),
)
def restrained_rod(
    *,
    length: Annotated[float, Of("length", above=0)],
    metal: MetalText,
    modulus: Annotated[float, Of("pressure", above=0)],
    end: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))],
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    yields: Annotated[float, Of("length", least=0)] = 0,
    diameter: Annotated[float, Of("length", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Stress in a rod that is heated or cooled while its ends are held.

    length: length between the ends, in `unit`.
    metal: what it is of, by name, or its growth such as 12 um/m.K.
    modulus: modulus of its metal, in the pressure of `unit`.
    end: temperature it is brought to, in degC.
    start: temperature at which it was without stress, in degC.
    yields: how much the ends give way together, in `unit`.
    diameter: diameter of the rod, for the force, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: σ = E·(α·L·ΔT − y)/L, as R. K. Bansal, Strength of Materials, examples 1.28 and 1.29.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> round(restrained_rod(length=5000, metal=parse_metal("12 um/m.K"), modulus=2e5,
    ...     start=95, end=30, yields=1.2).value)
    108
    """
    units = coherent(unit)
    w = Working()
    w.given("L", length, units.length, meaning="between the ends")
    growth = metal_line(w, "α", metal, "rod")
    w.given("E", modulus, units.pressure, meaning="modulus")
    w.given("T_0", start, "degC", meaning="without stress")
    w.given("T", end, "degC", meaning="end")
    w.given("y", yields, units.length, meaning="ends give way")
    rise = w.step("ΔT", "T − T_0", end - start, "K")
    free = w.step("ΔL", "α/10⁶·L·ΔT", growth / 1e6 * length * rise, units.length,
                  meaning="were it free", answer="growth")  # fmt: skip
    held = w.step("h", "max(|ΔL| − y, 0)", max(abs(free) - yields, 0), units.length,
                  meaning="held back")  # fmt: skip
    stress = w.step("σ", "E·h/L", modulus * held / length, units.pressure, answer="stress")
    if diameter is not None:
        w.given("d", diameter, units.length, meaning="rod")
        w.step("F", "π/4·d²·σ", pi / 4 * diameter**2 * stress, units.force, answer="force")
    w.tell("the rod is", ("pressed" if free > 0 else "pulled") if held else "free")
    return Worked(stress, w)
