from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.ignition._magneto import Snap, Turns


@a_sum(example="--running 28 --turns 0.5 --start 0", cautions=(BOOK_FIRST, CRANK, SHOCK))
def magneto_lag(
    *,
    running: Annotated[float, Of("deg", least=0, most=90)],
    turns: Turns,
    start: Snap = 0.0,
) -> Worked[float]:
    """Lag of an impulse coupling that gives the running advance which the book asks for.

    running: advance before top dead centre when running, at the crank, in deg.
    turns: of the magneto for one of the crank, no unit; turn the engine once by hand and count.
    start: crank angle before top dead centre at which the impulse snaps, in deg; after it negative.
    Raises NotPossible where the impulse would have to snap before the running spark.
    Source: geometry of the drive, lag = turns·crank degrees; common practice, no source.

    >>> magneto_lag(running=28, turns=0.5).value
    14.0
    """
    if running < start:
        rule = f"must not be below the start's, {start:g} deg"
        raise NotPossible(f"running {running:g} deg", rule, "look whether the two are swapped")
    w = Working()
    w.given("α", running, "deg", meaning="running, before top dead centre")
    w.given("α_s", start, "deg", meaning="snap before top dead centre")
    w.given("k", turns, "", meaning="turns of the magneto for one of the crank")
    lag = turns * (running - start)
    w.step("λ", "k·(α − α_s)", lag, "deg", meaning="at the magneto", answer="lag")
    return Worked(lag, w)
