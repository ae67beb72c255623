from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.electrics._battery import (
    DISAGREE,
    TABLE,
    Acid,
    AcidWarmth,
    Cells,
    acid,
    at_80,
    charge,
    from_table,
    voltage,
)


@a_sum(example="--reading 1.215 --temperature '40 F' --cells 3", cautions=(BATTERY,))
def battery_charge(
    *, reading: Acid, temperature: AcidWarmth = 80, cells: Cells | None = None
) -> Worked[float]:
    """Charge of a lead-acid battery from the hydrometer, with the acid's temperature allowed for.

    Read after an hour at rest; not just after water was added.

    reading: specific gravity that the hydrometer shows, in sg.
    temperature: of the acid, in degF.
    cells: 3 for a 6 V battery, 6 for 12 V, where its voltage is asked, a count.
    Source: a battery maker's table at 80 °F, straight between its rows; 0.004 for each 10 °F, as
    three sources give it.

    >>> round(battery_charge(reading=1.225).value)
    75
    """
    w = Working()
    s = at_80(w, reading, temperature)
    share = from_table(w, "C", charge, ("S", acid, s), "%", "charge")
    six = from_table(w, "U_6", voltage, ("S", acid, s), "V", "voltage of six cells at rest")
    if cells is not None:
        w.given("z", cells, "", meaning="cells")
        w.step("U", "z/6·U_6", cells / 6 * six, "V", meaning="at rest", answer="voltage at rest")
    if s > TABLE[-1].acid:
        w.note("Above the table's full charge: strong acid was filled in, or the reading is off.")
    if s < TABLE[0].acid:
        w.note("Below the table's empty: flat, sulphated, or watered; charge it and read again.")
    w.note(DISAGREE)
    return Worked(share, w)
