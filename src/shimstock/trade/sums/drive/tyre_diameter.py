from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, Read, a_sum
from shimstock.trade.sums.drive._tyre import EXAMPLE, Tyre, read_tyre


@a_sum(example="--tyre 13.6-28")
def tyre_diameter(
    *,
    tyre: Annotated[Tyre, Read(read_tyre, EXAMPLE, found="tyre")],
    aspect: Annotated[float, Of("", above=0, most=1.5, known=(0.65, 1))] = 0.75,
) -> Worked[float]:
    """Outside diameter of a tyre about from its size; measure the rolling circumference for better.

    tyre: section width and rim as moulded on it, no unit.
    aspect: height of the section for each unit of its width, no unit.
    Source: D = rim + 2·section·aspect; graduate examination in agricultural engineering, 2009.

    >>> round(tyre_diameter(tyre=read_tyre("13.6-28")).value, 1)
    48.4
    """
    w = Working()
    w.given("d", tyre.rim, "in", meaning="rim")
    w.given("b", tyre.section, "in", meaning="width of the section")
    w.given("a", aspect, "", meaning="height to width")
    across = tyre.rim + 2 * tyre.section * aspect
    w.step("D", "d + 2·b·a", across, "in", meaning="outside", answer="diameter")
    w.tell("doubt", "narrow tyres of old sizes stand up to 15 % larger; measure what it rolls")
    return Worked(across, w)
