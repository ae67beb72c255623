from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import (
    Amperes,
    Area,
    AsGauge,
    Run,
    System,
    Warmth,
    area_of,
    resistivity,
)
from shimstock.trade.sums.electrics._wire import length as cable


@a_sum(
    example="--current '300 A' --gauge 2/0 --out '6 ft' --back '4 ft' --system '6 V'",
    cautions=(BATTERY,),
)
def voltage_drop(
    *,
    current: Amperes,
    out: Run,
    system: System,
    gauge: AsGauge | None = None,
    area: Area | None = None,
    back: Annotated[float, Of("m", least=0)] = 0,
    temperature: Warmth = 20,
) -> Worked[float]:
    """Voltage that a cable takes for itself, out and back, and its share on 6, 12 or 24 volts.

    Joints, clamps and a rusty frame take more than the copper: measure them under load.

    current: that the starter or lamp draws, in A.
    out: length of the cable out, in m.
    system: voltage of the battery, such as 6, 12 or 24, in V.
    gauge: American wire gauge from 4/0 to 40, no unit.
    area: of the copper, in the place of the gauge, in mm2.
    back: length of the cable back, 0 where the frame carries the current, in m.
    temperature: of the copper, in degC.
    Raises NotPossible where not exactly one of gauge and area is given, or the cable would take
    the whole voltage.
    Source: Ohm's law with annealed copper of 0.017241 ohm for a metre of 1 mm² at 20 °C.

    >>> round(voltage_drop(current=300, gauge=-1, out=3.048, system=6).value, 4)
    0.2338
    """
    w = Working()
    a = area_of(w, gauge, area)
    rho = resistivity(w, temperature)
    run = cable(w, out, back)
    r = w.step("R", "ρ·L/A", rho * run / a, "ohm", meaning="resistance", answer="resistance")
    w.given("I", current, "A", meaning="current")
    w.given("U", system, "V", meaning="voltage of the battery")
    if current * r >= system:
        said = f"{current:g} A through this cable"
        rule = f"would take all of {system:g} V"
        raise NotPossible(said, rule, "look at current, length and size again")
    drop = w.step("ΔU", "I·R", current * r, "V", meaning="lost in the cable", answer="drop")
    w.step("s", "100·ΔU/U", 100 * drop / system, "%", meaning="share of the voltage",
           answer="share")  # fmt: skip
    w.step("U_l", "U − ΔU", system - drop, "V", meaning="left at the end", answer="left")
    return Worked(drop, w)
