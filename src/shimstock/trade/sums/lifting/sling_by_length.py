from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SLING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--load '250 lb' --leg '60 in' --height '48 in'", cautions=(SLING,))
def sling_by_length(
    *,
    load: Annotated[float, Of("kg", above=0)],
    leg: Annotated[float, Of("mm", above=0)],
    height: Annotated[float, Of("mm", above=0)],
    rated: Annotated[float, Of("kg", above=0)] | None = None,
) -> Worked[float]:
    """Pull in a sling's leg from its length and the height of the hook: no angle to measure.

    load: what hangs on this leg alone, in kg.
    leg: length of the leg from hook to eye, in mm.
    height: of the hook above the eyes, in mm.
    rated: load the leg is rated for hanging straight, in kg.
    Raises NotPossible where the leg is shorter than the height, or lies too flat.
    Source: sling maker's chart, pull = load on the leg·length/height; crane training page.

    >>> round(sling_by_length(load=1200, leg=120, height=96).value)
    1500
    """
    if leg < height:
        rule = f"cannot be shorter than the height, {height:g} mm"
        raise NotPossible(f"leg {leg:g} mm", rule, "look whether the two are swapped")
    if leg > 2 * height * (1 + 1e-9):
        rule = "lies flatter than 30 deg from the level"
        raise NotPossible(f"leg {leg:g} mm", rule, "raise the hook: take longer slings")
    w = Working()
    w.given("S", load, "kg", meaning="on this leg")
    w.given("L", leg, "mm", meaning="length of the leg")
    w.given("H", height, "mm", meaning="height of the hook")
    factor = w.step("k", "L/H", leg / height, "", meaning="pull for each kg hung", answer="factor")
    if rated is not None:
        w.given("W_0", rated, "kg", meaning="rated hanging straight")
        w.step("W", "W_0·H/L", rated * height / leg, "kg", meaning="so leaned", answer="rated")
    pull = load * factor
    w.step("T", "S·k", pull, "kg", meaning="in the leg", answer="leg")
    return Worked(pull, w)
