from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._magneto import Snap, Turns


@dataclass(frozen=True)
class Advance:
    """Lag at the crank and running advance, both in deg of the crank."""

    lag: float
    running: float


@a_sum(example="--lag 14 --turns 0.5 --start 0", cautions=(BOOK_FIRST, CRANK, SHOCK))
def magneto_advance(
    *,
    lag: Annotated[float, Of("deg", least=0, most=90)],
    turns: Turns,
    start: Snap = 0.0,
) -> Worked[Advance]:
    """Running advance at the crank that an impulse coupling's lag gives.

    Hold it against the book's: a coupling of another lag, or a drive of another speed, shows here.

    lag: of the impulse at the magneto's own shaft, in deg.
    turns: of the magneto for one of the crank, no unit; turn the engine once by hand and count.
    start: crank angle before top dead centre at which the impulse snaps, in deg; after it negative.
    Source: geometry of the drive, crank degrees = lag/turns; common practice, no source.

    >>> magneto_advance(lag=14, turns=0.5).value.running
    28.0
    """
    w = Working()
    w.given("λ", lag, "deg", meaning="lag at the magneto")
    w.given("α_s", start, "deg", meaning="snap before top dead centre")
    w.given("k", turns, "", meaning="turns of the magneto for one of the crank")
    at_crank = w.step("λ_c", "λ/k", lag / turns, "deg", meaning="at the crank", answer="lag")
    running = at_crank + start
    w.step("α", "λ_c + α_s", running, "deg", meaning="before top dead centre",
           answer="running advance")  # fmt: skip
    return Worked(Advance(at_crank, running), w)
