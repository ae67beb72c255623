from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.keys._b17_1 import Form
from shimstock.trade.sums.keys._key_size import key_lines

INCH_POUNDS = 33_000 * 12  # a minute, in one horsepower


@a_sum(
    example="--power '5 hp' --speed '1750 rpm' --shaft '1/2 in' --shear '30500 psi' "
    "--crushing '51000 psi'",
    cautions=(BOOK_FIRST,),
)
def key_length(
    *,
    power: Annotated[float, Of("hp", above=0)],
    speed: Annotated[float, Of("rpm", above=0)],
    shaft: Annotated[float, Of("in", above=0)],
    shear: Annotated[float, Of("psi", above=0)],
    crushing: Annotated[float, Of("psi", above=0)],
    safety: Annotated[float, Of("", least=1)] = 2.5,
    width: Annotated[float, Of("in", above=0)] | None = None,
    height: Annotated[float, Of("in", above=0)] | None = None,
    form: Form = "square",
) -> Worked[float]:
    """Length that a key needs, so that it is neither sheared nor crushed.

    power: power that goes through, in hp.
    speed: speed of the shaft, in rpm.
    shaft: diameter of the shaft, in in.
    shear: shear strength of the key, often half of its tensile strength, in psi.
    crushing: strength of the weakest of key, shaft and hub when pressed, in psi.
    safety: how many times stronger than needed, no unit.
    width: width of the key, in in; of the table where nothing is typed.
    height: height of the key, in in; that of the table, or the width where a width is typed.
    form: square or rectangular, where the table gives the key.
    Raises NotPossible where the key is not smaller than the shaft, or the table holds no key.
    Source: T. H. Wentzell, Machine Design, example 15.1: L = 2·T/(S_s·W·D) and 4·T/(S_c·H·D); key
    by ANSI B17.1.

    >>> round(key_length(power=5, speed=1750, shaft=0.5, shear=30500, crushing=51000).value, 2)
    0.56
    """
    w = Working()
    w.given("P", power, "hp", meaning="power")
    w.given("n", speed, "rpm", meaning="speed")
    w.given("D", shaft, "in", meaning="shaft")
    width, height = key_lines(w, shaft, width, height, form)
    w.given("S_s", shear, "psi", meaning="shear strength")
    w.given("S_c", crushing, "psi", meaning="strength when pressed")
    w.given("k", safety, "", meaning="safety")
    torque = w.step("T", f"{INCH_POUNDS}·P/(2·π·n)", INCH_POUNDS * power / (2 * pi * speed),
                    "lbf.in", answer="torque")  # fmt: skip
    sheared = w.step("L_s", "k·2·T/(S_s·W·D)", safety * 2 * torque / (shear * width * shaft), "in",
                     answer="by shear")  # fmt: skip
    crushed = w.step("L_c", "k·4·T/(S_c·H·D)", safety * 4 * torque / (crushing * height * shaft),
                     "in", answer="by crushing")  # fmt: skip
    length = w.step("L", "max(L_s, L_c)", max(sheared, crushed), "in", answer="length")
    w.tell("governs", "shear" if sheared > crushed else "crushing")
    return Worked(length, w)
