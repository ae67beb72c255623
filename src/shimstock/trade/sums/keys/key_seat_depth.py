from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.keys._b17_1 import Form
from shimstock.trade.sums.keys._key_size import key_lines


@a_sum(example="--shaft '1 1/2 in'", cautions=(BOOK_FIRST,))
def key_seat_depth(
    *,
    shaft: Annotated[float, Of("in", above=0)],
    width: Annotated[float, Of("in", above=0)] | None = None,
    height: Annotated[float, Of("in", above=0)] | None = None,
    form: Form = "square",
    clearance: Annotated[float, Of("in", least=0)] = 0.005,
) -> Worked[tuple[float, float]]:
    """How deep a key seat is cut, measured to the far side of the shaft and of the bore.

    Half of the key's height lies in the shaft at its edge; a caliper reaches over the rest.

    shaft: diameter of the shaft, in in.
    width: width of the key, in in; of the table where nothing is typed.
    height: height of the key, in in; that of the table, or the width where a width is typed.
    form: square or rectangular, where the table gives the key.
    clearance: clearance over the key in the hub, in in.
    Raises NotPossible where the key is not smaller than the shaft, or the table holds no key.
    Source: ANSI B17.1, depth control values: S = ½·(D − H + √(D² − W²)), T = S + H + 0.005.

    >>> [round(each, 3) for each in key_seat_depth(shaft=1).value]
    [0.859, 1.114]
    """
    w = Working()
    w.given("D", shaft, "in", meaning="shaft")
    width, height = key_lines(w, shaft, width, height, form)
    w.given("c", clearance, "in", meaning="clearance over the key")
    left = (shaft - height + sqrt(shaft**2 - width**2)) / 2
    w.step("S", "(D − H + √(D² − W²))/2", left, "in",
           meaning="bottom of the seat to the far side of the shaft", answer="shaft")  # fmt: skip
    over = w.step("T", "S + H + c", left + height + clearance, "in",
                  meaning="top of the seat to the far side of the bore", answer="hub")  # fmt: skip
    cut = w.step("t", "D − S", shaft - left, "in", meaning="down from the top of the shaft",
                 answer="cut")  # fmt: skip
    if cut >= shaft / 2:
        rule = "would go to the middle of the shaft or beyond"
        raise NotPossible(f"a key seat {cut:.4g} in deep", rule, "look at the size of the key")
    return Worked((left, over), w)
