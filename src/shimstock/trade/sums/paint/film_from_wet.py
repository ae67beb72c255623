from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.paint._solids import Film, Solids, Thinner, thinned


@a_sum(example="--wet '4 thou' --solids 45 --thinner 10", cautions=(PAINT,))
def film_from_wet(*, wet: Film, solids: Solids, thinner: Thinner = 0) -> Worked[float]:
    """Dry film that a wet film will leave.

    wet: wet film as read on the comb, in um.
    solids: solids by volume, from the paint's sheet, in %.
    thinner: thinner for each hundred volumes of paint, in %.
    Source: DFT = WFT·VS/100, common form of paint makers' sheets; spreading-rate note 5.3.

    >>> film_from_wet(wet=100, solids=50).value
    50.0
    """
    w = Working()
    w.given("WFT", wet, "um", meaning="wet film")
    share = thinned(w, solids, thinner)
    dry = w.step("DFT", "WFT·VS_t/100", wet * share / 100, "um", answer="dry film")
    return Worked(dry, w)
