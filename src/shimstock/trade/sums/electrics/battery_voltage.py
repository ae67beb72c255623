from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.electrics._battery import Acid, Cells


@a_sum(example="--acid 1.265 --cells 3", cautions=(BATTERY,))
def battery_voltage(*, acid: Acid, cells: Cells) -> Worked[float]:
    """Voltage at rest of a lead-acid battery from its acid, by the rule of 0.84.

    acid: specific gravity of the acid at about 80 °F, in sg.
    cells: 3 for a 6 V battery, 6 for 12 V, a count.
    Source: cell voltage = specific gravity + 0.84, as a battery page gives it; the battery maker's
    table of battery-charge lies up to 0.14 V above it for six cells.

    >>> round(battery_voltage(acid=1.265, cells=6).value, 2)
    12.63
    """
    w = Working()
    w.given("S", acid, "sg", meaning="acid")
    w.given("z", cells, "", meaning="cells")
    one = w.step("U_1", "S + 0.84", acid + 0.84, "V", meaning="one cell", answer="cell")
    volts = w.step("U", "z·U_1", cells * one, "V", meaning="at rest", answer="voltage")
    return Worked(volts, w)
