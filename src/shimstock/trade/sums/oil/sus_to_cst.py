from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--seconds 230 --gravity 0.9")
def sus_to_cst(
    *,
    seconds: Annotated[float, Of("", least=32, most=1e6)],
    gravity: Annotated[float, Of("sg", least=0.5, most=2)] | None = None,
) -> Worked[float]:
    """Viscosity in mm²/s (centistokes) from Saybolt Universal seconds, as old oil sheets print.

    seconds: Saybolt Universal seconds, no unit.
    gravity: specific gravity, where centipoise are wanted too, in sg.
    Source: A. Esposito, Fluid Power with Applications, example 2.12: ν = 0.220·t − 135/t above 100
    seconds, 0.226·t − 195/t up to 100; the latter from memory.

    >>> round(sus_to_cst(seconds=230).value)
    50
    """
    w = Working()
    w.given("t", seconds, "", meaning="Saybolt Universal seconds")
    if seconds > 100:
        w.note("More than 100 seconds.")
        shown, value = "0.220·t − 135/t", 0.220 * seconds - 135 / seconds
    else:
        w.note("100 seconds or fewer.")
        shown, value = "0.226·t − 195/t", 0.226 * seconds - 195 / seconds
    w.step("ν", shown, value, "mm2/s", answer="viscosity")
    if gravity is not None:
        w.given("SG", gravity, "sg", meaning="specific gravity")
        w.step("μ", "ν·SG", value * gravity, "cP", answer="thickness")
    return Worked(value, w)
