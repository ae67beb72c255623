from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.paint._solids import Film, Solids, Thinner, thinned


@a_sum(example="--dry '2 thou' --solids 45 --thinner 10", cautions=(PAINT,))
def wet_film(*, dry: Film, solids: Solids, thinner: Thinner = 0) -> Worked[float]:
    """Wet film that dries to the film wanted, to be read on a comb while spraying.

    dry: dry film wanted, in um.
    solids: solids by volume, from the paint's sheet, in %.
    thinner: thinner for each hundred volumes of paint, in %.
    Source: WFT = 100·DFT/VS, common form of paint makers' sheets; spreading-rate note 5.3.

    >>> round(wet_film(dry=125, solids=71).value)
    176
    """
    w = Working()
    w.given("DFT", dry, "um", meaning="dry film")
    share = thinned(w, solids, thinner)
    wet = w.step("WFT", "100·DFT/VS_t", 100 * dry / share, "um", answer="wet film")
    return Worked(wet, w)
