from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PAINT
from shimstock.trade.sums.declare import Of, a_sum

RULE = (
    "Common practice, no source: paint dries twice as fast for each 10 °C more. The sheet's own "
    "times for the temperature go before this."
)


@a_sum(
    example="--earliest '16 h' --latest '7 days' --sheet-at '20 degC' --metal '12 degC' "
    "--waited '40 h'",
    cautions=(PAINT,),
)
def recoat_window(
    *,
    earliest: Annotated[float, Of("h", above=0)],
    latest: Annotated[float, Of("h", above=0)] | None = None,
    sheet_at: Annotated[float, Of("degC", least=-20, most=100)] = 23,
    metal: Annotated[float, Of("degC", least=-20, most=100, known=(5, 40))] = 23,
    waited: Annotated[float, Of("h", least=0)] | None = None,
) -> Worked[float]:
    """When the next coat may go on without sanding, at the temperature in the shed.

    earliest: shortest wait on the paint's sheet, in h.
    latest: longest wait on the sheet before the coat must be scuffed, in h.
    sheet_at: temperature that the sheet's times are for, in degC.
    metal: temperature of the metal while it dries, in degC.
    waited: how long it has been drying, in h.
    Raises NotPossible where the latest time comes before the earliest.
    Source: common practice, no source: drying takes half as long for each 10 °C more. The times
    themselves are the paint's sheet's.

    >>> recoat_window(earliest=16, latest=168, sheet_at=20, metal=10).value
    32.0
    """
    if latest is not None and latest < earliest:
        rule = f"must not be before the earliest, {earliest:g} h"
        raise NotPossible(f"latest {latest:g} h", rule, "look whether the two are swapped")
    w = Working()
    w.note(RULE)
    w.given("T_s", sheet_at, "degC", meaning="temperature of the sheet's times")
    w.given("T", metal, "degC", meaning="temperature of the metal")
    cooler = w.step("c", "(T_s − T)/10", (sheet_at - metal) / 10, "", meaning="tens of degrees")
    k = w.step("k", "2^c", 2**cooler, "", meaning="times as long as on the sheet")
    w.given("t_e", earliest, "h", meaning="earliest on the sheet")
    first = w.step("t_1", "t_e·k", earliest * k, "h", answer="earliest")
    last = None
    if latest is not None:
        w.given("t_l", latest, "h", meaning="latest on the sheet")
        last = w.step("t_2", "t_l·k", latest * k, "h", answer="latest")
    if waited is not None:
        w.given("t", waited, "h", meaning="waited so far")
        _now(w, waited, first, last)
    return Worked(first, w)


def _now(w: Working, waited: float, first: float, last: float | None) -> None:
    """Says whether the window is open, and if not, what to do."""
    if waited < first:
        w.tell("recoat now", "no")
        w.tell("because", f"it needs {first - waited:.3g} h more")
    elif last is not None and waited > last:
        w.tell("recoat now", "no")
        w.tell("because", "the window is past: scuff it first")
    else:
        w.tell("recoat now", "yes")
