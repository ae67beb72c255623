from math import asin, pi, sqrt
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, a_sum

Length = Annotated[float, Of("length", above=0)]


@a_sum(example="--first '14 in' --second '8 in' --centres '20 ft' --lay crossed",
       cautions=(RUNNING,))  # fmt: skip
def belt_length(
    *,
    first: Annotated[float, Of("length", above=0, found="pulley diameter")],
    second: Length,
    centres: Length,
    lay: Literal["open", "crossed"] = "open",
    unit: str = "mm",
) -> Worked[float]:
    """Length of an open or crossed belt round two pulleys, exactly and by the short form.

    first: diameter of one pulley, in `unit`.
    second: diameter of the other, in `unit`.
    centres: distance between the shafts, in `unit`.
    lay: open or crossed, no unit.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the pulleys would touch.
    Source: geometry; B. K. Sarkar, Theory of Machines, illustration 2.3, page 58 (short form).

    >>> round(belt_length(first=300, second=500, centres=5000, lay="crossed").value, 2)
    11288.65
    """
    if centres <= (first + second) / 2:
        rule = f"must be more than half of both pulleys, {(first + second) / 2:g} {unit}"
        raise NotPossible(f"centres {centres:g} {unit}", rule, "look at the units")
    w = Working()
    w.given("D", first, unit, meaning="one pulley")
    w.given("d", second, unit, meaning="the other")
    w.given("C", centres, unit, meaning="between the shafts")
    sign, shown = (1, "D + d") if lay == "crossed" else (-1, "|D − d|")
    e = w.step("e", f"({shown})/2", abs(first + sign * second) / 2, unit, meaning=f"{lay} belt")
    straight = w.step("t", "√(C² − e²)", sqrt(centres**2 - e**2), unit, meaning="straight run")
    phi = w.step("φ", "arcsin(e/C)", asin(e / centres), "rad")
    if lay == "crossed":
        exact = 2 * straight + (first + second) * (pi / 2 + phi)
        w.step("L", "2·t + (D + d)·(π/2 + φ)", exact, unit, meaning="exact", answer="length")
    else:
        exact = 2 * straight + pi / 2 * (first + second) + 2 * e * phi
        w.step("L", "2·t + π/2·(D + d) + 2·e·φ", exact, unit, meaning="exact", answer="length")
    short = pi / 2 * (first + second) + 2 * centres + e**2 / centres
    w.step("L_s", "π/2·(D + d) + 2·C + e²/C", short, unit, meaning="short form of the books",
           answer="short form")  # fmt: skip
    return Worked(exact, w)
