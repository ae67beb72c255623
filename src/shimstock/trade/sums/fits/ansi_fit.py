from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._ansi_b4_1 import MEANS, ROWS, FitClass, held, row_of
from shimstock.trade.sums.fits._fit_lines import Fit, fit_lines


@a_sum(example="--size '1 1/2 in' --class 'FN 2'")
def ansi_fit(*, size: Annotated[float, Of("in", above=0)], class_: FitClass) -> Worked[Fit]:
    """Limits of hole and shaft, and their clearance or interference, for an American inch fit.

    Only part of the standard is held here: FN 1 over 1.58 to 1.97 in, FN 2 over 0.95 to 3.94 in,
    RC 2 over 1.19 to 1.97 in, RC 4 over 0.71 to 1.97 in.

    size: nominal size, in in.
    class_: FN 1 light drive, FN 2 medium drive, RC 2 sliding, RC 4 close running.
    Raises NotPossible for a size that is not held here for this class.
    Source: ANSI B4.1, as printed in Machinery's Handbook, 27th edition, page 663 and on.

    >>> got = ansi_fit(size=1.5, class_="FN 2").value
    >>> round(got.least, 4), round(got.most, 4)
    (-0.0024, -0.0008)
    """
    row = row_of(class_, size)
    if row is None:
        rule = f"is not held here for {class_}, which runs {held(class_)}"
        would = "look in the standard and type both limits into fit, or take iso-fit"
        raise NotPossible(f"size {size:g} in", rule, would)
    w = Working()
    every = "; ".join(f"{each} {held(each)}" for each in ROWS)
    w.note(f"{class_} is a {MEANS[class_]}; the row is for over {row.over:g} to {row.to:g} in.")
    w.note(f"Held here: {every}.")
    w.given("D", size, "in", meaning="nominal size")
    for symbol, what, (upper, lower) in (("H", "hole", row.hole), ("S", "shaft", row.shaft)):
        w.given(f"u_{symbol}", upper, "thou", meaning=f"upper deviation of the {what}")
        w.given(f"l_{symbol}", lower, "thou", meaning=f"lower deviation of the {what}")
        w.step(f"{symbol}_max", f"D + u_{symbol}/1000", size + upper / 1000, "in",
               answer=f"largest {what}")  # fmt: skip
        w.step(f"{symbol}_min", f"D + l_{symbol}/1000", size + lower / 1000, "in",
               answer=f"smallest {what}")  # fmt: skip
    return Worked(fit_lines(w, "in"), w)
