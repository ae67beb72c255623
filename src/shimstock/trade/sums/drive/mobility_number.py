from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--cone '1200 kPa' --width '18.4 in' --diameter '64 in' --load '4000 lbf'")
def mobility_number(
    *,
    cone: Annotated[float, Of("kPa", above=0)],
    width: Annotated[float, Of("m", above=0, most=1.5)],
    diameter: Annotated[float, Of("m", above=0, most=3)],
    load: Annotated[float, Of("kN", above=0, most=500)],
    deflection: Annotated[float, Of("", least=0, most=0.5)] = 0.2,
) -> Worked[float]:
    """How firm a soil is for one wheel: Brixius' mobility number from a cone penetrometer.

    cone: index of the penetrometer, in kPa.
    width: of the tyre's section, in m.
    diameter: of the tyre, in m.
    load: on the wheel, in kN.
    deflection: of the tyre as a share of its section's height, no unit.
    Source: Brixius, ASABE D497, B_n = C_n·(1 + 5·δ/h)/(1 + 3·b/d), from memory.

    >>> round(mobility_number(cone=1200, width=0.467, diameter=1.62, load=18).value, 3)
    54.092
    """
    w = Working()
    w.given("CI", cone, "kPa", meaning="cone index")
    w.given("b", width, "m", meaning="width of the tyre")
    w.given("d", diameter, "m", meaning="diameter of the tyre")
    w.given("W", load, "kN", meaning="load on the wheel")
    w.given("k", deflection, "", meaning="deflection to height of the section")
    c = w.step("C_n", "CI·b·d/W", cone * width * diameter / load, "", answer="wheel number")
    number = c * (1 + 5 * deflection) / (1 + 3 * width / diameter)
    w.step("B_n", "C_n·(1 + 5·k)/(1 + 3·b/d)", number, "", answer="mobility number")
    return Worked(number, w)
