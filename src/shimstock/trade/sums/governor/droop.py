from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import larger

By = Literal["full-load speed", "declared speed", "no-load speed"]
DIVISORS = (
    "Prints divide the droop by different speeds: compare two only where both say the same, and "
    "hold a figure of the book against the droop that the book means."
)
SOURCES = {
    "full-load speed": "US Army TM 55-1930-209-14&P-9-2",
    "declared speed": "ISO 3046-4 and ISO 8528-5, from memory",
    "no-load speed": "a marine engineering page; unlike the standards",
}


@a_sum(example="--no-load 1100 --full-load 975", cautions=(BOOK_FIRST, GOVERNOR, DIVISORS))
def droop(
    *,
    no_load: Annotated[float, Of("rpm", above=0, found="high idle")],
    full_load: Annotated[float, Of("rpm", above=0, found="rated speed")],
    declared: Annotated[float, Of("rpm", above=0)] | None = None,
    by: By = "full-load speed",
) -> Worked[float]:
    """How much an engine slows from no load to full load, with the speed it is divided by named.

    Three divisors are in print; speed-swing divides by a fourth, the speed before the load changed.

    no_load: speed without load, in rpm.
    full_load: speed at full load, in rpm.
    declared: speed that the maker declares, where it is divided by that, in rpm.
    by: the speed that the difference is divided by, no unit.
    Raises NotPossible where the loaded speed is not the lower, or a declared speed is missing
    or not used.
    Source: US Army TM 55-1930-209-14&P-9-2 for full-load speed; ISO 3046-4 and ISO 8528-5 for the
    declared speed, from memory.

    >>> round(droop(no_load=1000, full_load=900).value, 2)
    11.11
    """
    larger("no-load speed", no_load, "the full-load", full_load, "rpm")
    if by == "declared speed" and declared is None:
        raise NotPossible("declared speed", "is missing", "type it, or divide by the full-load one")
    if by != "declared speed" and declared is not None:
        said = f"declared speed {declared:g} rpm"
        rule = f"is not used where the droop is divided by the {by}"
        raise NotPossible(said, rule, "divide by the declared speed, or leave it out")
    w = Working()
    w.given("n_0", no_load, "rpm", meaning="without load")
    w.given("n_1", full_load, "rpm", meaning="at full load")
    divisor, value = "n_1", full_load
    if by == "no-load speed":
        divisor, value = "n_0", no_load
    elif by == "declared speed" and declared is not None:
        divisor, value = "n_r", w.given("n_r", declared, "rpm", meaning="declared")
    share = 100 * (no_load - full_load) / value
    w.step("δ", f"100·(n_0 − n_1)/{divisor}", share, "%", meaning=f"of the {by}", answer="droop")
    w.tell("divided by", f"{by}, {SOURCES[by]}")
    return Worked(share, w)
