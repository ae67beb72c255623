from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST
from shimstock.trade.sums.freeing._metals import SPREAD_SAID, MetalText, metal_line


@a_sum(example="--length '2 1/2 in' --metal 'grey iron' --end '150 degC'", cautions=(HEAT,))
def expansion(
    *,
    length: Annotated[float, Of("length", above=0)],
    metal: MetalText,
    end: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))],
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    unit: str = "mm",
) -> Worked[float]:
    """How much a length or a diameter grows when it is heated, or shrinks when it is chilled.

    A hole grows just as if it were filled with its own metal.

    length: length or diameter at the start, in `unit`.
    metal: what it is of, by name, or its growth such as 12 um/m.K.
    end: temperature it is brought to, in degC.
    start: temperature it begins at, in degC.
    unit: unit of the lengths, mm or in.
    Source: ΔL = α·L·ΔT; α from Dooley, Applied Science for Metal Workers, and Callister, Materials
    Science and Engineering, appendix B, as the working names them.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> round(expansion(length=2000, metal=parse_metal("12 um/m.K"), start=10, end=80).value, 2)
    1.68
    """
    unit = coherent(unit).length
    w = Working()
    w.given("L", length, unit, meaning="at the start")
    growth = metal_line(w, "α", metal, "metal")
    w.given("T_0", start, "degC", meaning="start")
    w.given("T", end, "degC", meaning="end")
    rise = w.step("ΔT", "T − T_0", end - start, "K", answer="warming")
    more = w.step("ΔL", "α/10⁶·L·ΔT", growth / 1e6 * length * rise, unit, answer="growth")
    w.step("L_T", "L + ΔL", length + more, unit, answer="length")
    if metal.spread:
        w.note(SPREAD_SAID)
    return Worked(more, w)
