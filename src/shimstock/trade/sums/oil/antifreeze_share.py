from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COOLANT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._glycol import COLDEST, share_for


@a_sum(example="--freezing '-25 degC' --system '14 l'", cautions=(COOLANT,))
def antifreeze_share(
    *,
    freezing: Annotated[float, Of("degC", least=COLDEST, most=0)],
    system: Annotated[float, Of("l", above=0, found="coolant capacity")] | None = None,
) -> Worked[float]:
    """Share of ethylene glycol that a coolant needs for a freezing point, and litres of it.

    More than 60 % freezes sooner again and carries less heat. An antifreeze concentrate is nearly
    all glycol; what is sold ready mixed is not, and goes in as it is.

    freezing: freezing point wanted, in degC.
    system: what radiator, block and hoses hold, in l.
    Source: ASHRAE data for aqueous ethylene glycol, by volume, as a general property library fits
    them: 20 % −9.0, 30 % −15.7, 40 % −24.8, 50 % −37.1, 60 % −52.0 °C.

    >>> round(antifreeze_share(freezing=-24.8).value, 6)
    40.0
    """
    w = Working()
    w.given("t_f", freezing, "degC", meaning="freezing point wanted")
    share = share_for(w, freezing)
    if system is not None:
        w.given("V", system, "l", meaning="the system holds")
        glycol = w.step("V_g", "V·p/100", system * share / 100, "l", answer="glycol")
        w.step("V_w", "V − V_g", system - glycol, "l", answer="water")
    return Worked(share, w)
