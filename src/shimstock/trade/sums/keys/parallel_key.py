from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.keys._b17_1 import Form, inches
from shimstock.trade.sums.keys._key_size import height_of, table_key


@a_sum(example="--shaft '1 1/2 in'", cautions=(BOOK_FIRST,))
def parallel_key(
    *, shaft: Annotated[float, Of("in", above=0)], form: Form = "square"
) -> Worked[tuple[float, float]]:
    """Width and height of the parallel key that an inch shaft takes.

    A metric shaft takes a metric key, which is not held here.

    shaft: diameter of the shaft, in in.
    form: square or rectangular; square is usual up to 6 1/2 in.
    Raises NotPossible for a shaft that the table does not hold, over 5/16 and up to 4 1/2 in.
    Source: ANSI B17.1, key size against shaft diameter; heights of rectangular keys from memory.

    >>> parallel_key(shaft=1.5).value
    (0.375, 0.375)
    """
    key = table_key(shaft)
    height = height_of(key, form, shaft)
    w = Working()
    w.given("D", shaft, "in", meaning="shaft")
    w.note(f"The row of the table runs up to {key.to:g} in.")
    w.step("W", key.width, inches(key.width), "in", answer="width")
    w.step("H", height, inches(height), "in", answer="height")
    w.tell("key", f"{key.width} × {height} in")
    return Worked((inches(key.width), inches(height)), w)
