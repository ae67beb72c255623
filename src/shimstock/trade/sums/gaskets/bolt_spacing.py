from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

CLOSEST, WIDEST = 3, 6


@a_sum(example="--circle '5 1/4 in' --bolts 8 --bolt '3/8 in'")
def bolt_spacing(
    *,
    circle: Annotated[float, Of("length", above=0)],
    bolts: Annotated[int, Of("", least=2, found="count")],
    bolt: Annotated[float, Of("length", above=0)],
    unit: str = "in",
) -> Worked[float]:
    """Spacing of the bolts round a gasket in bolt diameters, against the rule of three to six.

    circle: diameter of the circle that the bolts stand on, in `unit`.
    bolts: how many there are, a count.
    bolt: diameter of a bolt, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: 3 ≤ π·D_b/(N·d) ≤ 6; J. E. Shigley, Mechanical Engineering Design, chapter 8, from
    memory.

    >>> round(bolt_spacing(circle=10, bolts=12, bolt=0.625).value, 2)
    4.19
    """
    w = Working()
    w.given("D_b", circle, unit, meaning="bolt circle")
    w.given("N", bolts, "", meaning="bolts")
    w.given("d", bolt, unit, meaning="bolt diameter")
    pitch = w.step("s", "π·D_b/N", pi * circle / bolts, unit, meaning="along the circle",
                   answer="spacing")  # fmt: skip
    ratio = w.step("q", "s/d", pitch / bolt, "", meaning="bolt diameters", answer="diameters")
    w.step("N_1", f"π·D_b/({WIDEST}·d)", pi * circle / (WIDEST * bolt), "", answer="fewest bolts")
    w.step("N_2", f"π·D_b/({CLOSEST}·d)", pi * circle / (CLOSEST * bolt), "", answer="most bolts")
    w.tell("rule", _said(ratio))
    return Worked(ratio, w)


def _said(ratio: float) -> str:
    if ratio < CLOSEST:
        return "too close: no room for a spanner"
    if ratio > WIDEST:
        return "too far apart: the cover bows between the bolts and the gasket leaks there"
    return "met"
