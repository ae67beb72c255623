from typing import Annotated, Literal

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._fit_lines import Fit, fit_lines


@a_sum(example="--size '25 mm' --least '0.01 mm' --most '0.02 mm' --share 1.5")
def hole_and_shaft(
    *,
    size: Annotated[float, Of("length", above=0)],
    least: Annotated[float, Of("length")],
    most: Annotated[float, Of("length")],
    share: Annotated[float, Of("", above=0)] = 1,
    basis: Literal["hole", "shaft"] = "hole",
    unit: str = "mm",
) -> Worked[Fit]:
    """Limits of hole and shaft that keep a fit between its least and most clearance.

    size: basic size, in `unit`.
    least: least clearance, in `unit`; below 0 where it is to be interference.
    most: most clearance, in `unit`; below 0 where it is to be interference.
    share: tolerance of the hole for one of the shaft, no unit.
    basis: the part whose limit is the basic size itself.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where least is not below most, or no part is left.
    Source: plain limit arithmetic, as P. C. Sharma, Production Engineering, examples 9.6 to 9.10.

    >>> worked = hole_and_shaft(size=25, least=0.01, most=0.02, share=1.5)
    >>> [round(worked.working.value(each), 3) for each in ("H_max", "S_max", "S_min")]
    [25.006, 24.99, 24.986]
    """
    unit = coherent(unit).length
    if least >= most:
        rule = f"must be below the most, {most:g} {unit}"
        raise NotPossible(
            f"least clearance {least:g} {unit}", rule, "look whether they are swapped"
        )
    w = Working()
    w.given("D", size, unit, meaning="basic size")
    w.given("c_1", least, unit, meaning="least clearance wanted")
    w.given("c_2", most, unit, meaning="most clearance wanted")
    w.given("k", share, "", meaning="tolerance of the hole for one of the shaft")
    t_s = w.step("T_S", "(c_2 − c_1)/(1 + k)", (most - least) / (1 + share), unit,
                 answer="shaft tolerance")  # fmt: skip
    t_h = w.step("T_H", "k·T_S", share * t_s, unit, answer="hole tolerance")
    (_on_hole if basis == "hole" else _on_shaft)(w, size, least, (t_h, t_s), unit)
    if min(w.value("S_min"), w.value("H_min")) <= 0:
        rule = "leaves nothing of one part"
        raise NotPossible(f"a basic size of {size:g} {unit}", rule, "look at the units")
    return Worked(fit_lines(w, unit), w)


def _on_hole(w: Working, size: float, least: float, t: tuple[float, float], unit: str) -> None:
    """The hole begins at the basic size."""
    low = w.step("H_min", "D", size, unit, answer="smallest hole")
    w.step("H_max", "D + T_H", low + t[0], unit, answer="largest hole")
    top = w.step("S_max", "D − c_1", size - least, unit, answer="largest shaft")
    w.step("S_min", "S_max − T_S", top - t[1], unit, answer="smallest shaft")


def _on_shaft(w: Working, size: float, least: float, t: tuple[float, float], unit: str) -> None:
    """The shaft ends at the basic size."""
    top = w.step("S_max", "D", size, unit, answer="largest shaft")
    w.step("S_min", "D − T_S", top - t[1], unit, answer="smallest shaft")
    low = w.step("H_min", "D + c_1", size + least, unit, answer="smallest hole")
    w.step("H_max", "H_min + T_H", low + t[0], unit, answer="largest hole")
