from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COOLANT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.oil._glycol import MOST, freezing_at


@a_sum(example="--share 33", cautions=(COOLANT,))
def freezing_point(*, share: Annotated[float, Of("%", least=0, most=MOST)]) -> Worked[float]:
    """Freezing point of a coolant from its share of ethylene glycol by volume.

    share: ethylene glycol by volume, in %.
    Source: ASHRAE data for aqueous ethylene glycol, by volume, as a general property library fits
    them: 20 % −9.0, 30 % −15.7, 40 % −24.8, 50 % −37.1, 60 % −52.0 °C.

    >>> round(freezing_point(share=50).value, 6)
    -37.1
    """
    w = Working()
    w.given("p", share, "%", meaning="ethylene glycol by volume")
    return Worked(freezing_at(w, share), w)
