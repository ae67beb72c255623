from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.paint._solids import Film, Loss, Solids


@a_sum(
    example="--area '130 ft2' --dry '2 thou' --solids 45 --coats 2 --loss 50 --thinner 15",
    cautions=(PAINT,),
)
def paint_needed(
    *,
    area: Annotated[float, Of("m2", above=0)],
    dry: Film,
    solids: Solids,
    coats: Annotated[int, Of("", least=1)] = 1,
    loss: Loss = 30,
    thinner: Annotated[float, Of("%", least=0, most=1000)] = 0,
) -> Worked[float]:
    """Litres of paint, and of thinner, for an area, a dry film and a number of coats.

    Common losses, no source: brush and roller about 10 %, spraying sheet metal about 30 %,
    spraying a frame about 50 %.

    area: area to paint, in m2.
    dry: dry film of each coat, in um.
    solids: solids by volume, from the paint's sheet, in %.
    coats: coats of this paint, a count.
    loss: overspray, rough metal and what stays in the gun, in %.
    thinner: thinner for each hundred volumes of paint, in %.
    Source: area over spreading rate, 10·VS/DFT in m²/l, common form of paint makers' sheets.

    >>> round(paint_needed(area=12, dry=50, solids=50, coats=2, loss=50).value, 2)
    4.8
    """
    w = Working()
    w.given("A", area, "m2", meaning="area")
    w.given("DFT", dry, "um", meaning="dry film of each coat")
    w.given("VS", solids, "%", meaning="solids by volume")
    w.given("n", coats, "", meaning="coats")
    w.given("q", loss, "%", meaning="lost")
    rate = w.step("S", "10·VS/DFT", 10 * solids / dry, "m2/l", meaning="spreading rate in theory")
    kept = w.step("k", "1 − q/100", 1 - loss / 100, "", meaning="what lands")
    paint = w.step("V", "n·A/(S·k)", coats * area / (rate * kept), "l", answer="paint")
    w.given("q_t", thinner, "%", meaning="thinner for each hundred of paint")
    w.step("V_t", "V·q_t/100", paint * thinner / 100, "l", answer="thinner")
    return Worked(paint, w)
