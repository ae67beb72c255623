from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._battery import (
    DISAGREE,
    TABLE,
    Cells,
    charge,
    from_table,
    voltage,
)


@a_sum(example="--volts '6.22 V' --cells 3", cautions=(BATTERY,))
def charge_from_voltage(
    *, volts: Annotated[float, Of("V", above=0)], cells: Cells
) -> Worked[float]:
    """Charge of a lead-acid battery from its voltage at rest.

    At rest: hours after charging, nothing drawn; just off the charger it reads too high.

    volts: measured over the posts, in V.
    cells: 3 for a 6 V battery, 6 for 12 V, a count.
    Raises NotPossible where no battery of so many cells has that voltage.
    Source: a battery maker's table at 80 °F, straight between its rows.

    >>> round(charge_from_voltage(volts=12.24, cells=6).value)
    50
    """
    w = Working()
    w.given("U", volts, "V", meaning="at rest")
    w.given("z", cells, "", meaning="cells")
    six = w.step("U_6", "6·U/z", 6 * volts / cells, "V", meaning="as for six cells")
    if six > 16:
        said = f"{volts:g} V of {cells} cells"
        raise NotPossible(said, "is more than a charger gives", "look at the number of cells")
    share = from_table(w, "C", charge, ("U_6", voltage, six), "%", "charge")
    if six < 10.5:
        w.note("So low a voltage at rest: count the cells again, 3 for 6 V and 6 for 12 V. If the "
               "number is right, it mostly means a dead cell.")  # fmt: skip
    if six > TABLE[-1].voltage:
        w.note("Above the table's full charge: a charger may be running, or ran not long ago.")
    w.note(DISAGREE)
    return Worked(share, w)
