from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK, SHOCK
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Advance:
    """Lag at the crank and running advance, both in deg of the crank."""

    lag: float
    running: float


@a_sum(example="--lag 14 --start 0", cautions=(BOOK_FIRST, CRANK, SHOCK))
def magneto_advance(
    *,
    lag: Annotated[float, Of("deg", least=0, most=90)],
    start: Annotated[float, Of("deg", least=-30, most=30)] = 0.0,
    speed_share: Annotated[float, Of("", above=0, most=2)] = 0.5,
) -> Worked[Advance]:
    """Running advance at the crank that an impulse coupling's lag gives.

    lag: of the impulse at the magneto's own shaft, in deg.
    start: crank angle before top dead centre at which the impulse snaps, in deg; after it negative.
    speed_share: turns of the magneto for one of the crank, no unit; a half on most four-cylinders.
    Source: geometry of the drive, crank degrees = lag/share; common practice, no source.

    >>> magneto_advance(lag=14).value.running
    28.0
    """
    w = Working()
    w.given("λ", lag, "deg", meaning="lag at the magneto")
    w.given("α_s", start, "deg", meaning="snap before top dead centre")
    w.given("k", speed_share, "", meaning="turns of the magneto for one of the crank")
    at_crank = w.step("λ_c", "λ/k", lag / speed_share, "deg", meaning="at the crank", answer="lag")
    running = at_crank + start
    w.step("α", "λ_c + α_s", running, "deg", meaning="before top dead centre",
           answer="running advance")  # fmt: skip
    return Worked(Advance(at_crank, running), w)
