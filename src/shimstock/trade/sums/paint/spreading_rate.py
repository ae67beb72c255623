from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.paint._solids import Film, Loss, Solids


@a_sum(example="--solids 45 --dry '2 thou' --loss 40", cautions=(PAINT,))
def spreading_rate(*, solids: Solids, dry: Film, loss: Loss = 0) -> Worked[float]:
    """Area that a volume of paint covers at a dry film, in theory and with what is lost.

    The same in US units: 1604·VS/DFT in ft²/gal, VS as a share of one and DFT in thou, since a US
    gallon of 231 in³ spread one thou thick covers 231/0.144 = 1604 ft².

    solids: solids by volume, from the paint's sheet, in %.
    dry: dry film, in um.
    loss: overspray, rough metal and what stays in the gun, in %.
    Source: 10·VS/DFT in m²/l, VS in % and DFT in µm, common form of paint makers' sheets;
    Spreading-rate general information.

    >>> spreading_rate(solids=65, dry=125).value
    5.2
    """
    w = Working()
    w.given("VS", solids, "%", meaning="solids by volume")
    w.given("DFT", dry, "um", meaning="dry film")
    theory = w.step("S", "10·VS/DFT", 10 * solids / dry, "m2/l", answer="in theory")
    w.given("q", loss, "%", meaning="lost")
    real = w.step("S_p", "S·(1 − q/100)", theory * (1 - loss / 100), "m2/l", answer="in practice")
    return Worked(real, w)
