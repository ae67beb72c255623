from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.electrics._battery import (
    TABLE,
    Acid,
    AcidWarmth,
    acid,
    at_80,
    freezing,
    from_table,
)

DOUBT = (
    "Tables differ widely here: others let acid of 1.120 freeze near −10 °C, not −23. Rely on "
    "none of them: keep a battery charged in frost."
)


@a_sum(
    example="--reading 1.190",
    cautions=(BATTERY, "Never charge or jump a frozen battery: it can burst. Thaw it first."),
)
def battery_freezing(*, reading: Acid, temperature: AcidWarmth = 80) -> Worked[float]:
    """Frost at which the acid of a battery freezes, by one table that others contradict.

    reading: specific gravity that the hydrometer shows, in sg.
    temperature: of the acid, in degF.
    Raises NotPossible below the table, where acid is nearly water.
    Source: a battery maker's table, straight between its rows; low confidence.

    >>> round(battery_freezing(reading=1.190).value)
    -37
    """
    w = Working()
    s = at_80(w, reading, temperature)
    if s < TABLE[0].acid - 1e-9:
        raise NotPossible(
            f"acid {written(s)}",
            "is below the table, 1.120",
            "treat it as water: it may freeze just below 0 °C",
        )
    point = from_table(w, "t_f", freezing, ("S", acid, s), "degC", "freezing point")
    w.tell("rely on it", "no: other tables have the same acid freeze 10 degrees warmer and more")
    w.note(DOUBT)
    return Worked(point, w)
