from math import floor, pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BATTERY
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.electrics._wire import (
    THICKEST,
    THINNEST,
    Amperes,
    Run,
    System,
    Warmth,
    length,
    named,
    nearest_gauge,
    resistivity,
)

USUAL = 5.0  # per cent of the battery that a starter cable may take


@a_sum(
    example="--current '300 A' --out '6 ft' --back '4 ft' --system '6 V' --share 4",
    cautions=(BATTERY,),
)
def starter_cable(
    *,
    current: Amperes,
    out: Run,
    system: System,
    back: Annotated[float, Of("m", least=0)] = 0,
    share: Annotated[float, Of("%", above=0, below=100)] | None = None,
    temperature: Warmth = 20,
) -> Worked[float]:
    """Thinnest American wire gauge that keeps the drop of a starter cable within a share.

    It looks at the drop alone: a cable that carries its current for long must also stay cool.
    Odd gauges above 1 are passed over, as they are hardly sold.

    current: that the starter draws, in A.
    out: length of the cable out, in m.
    system: voltage of the battery, such as 6, 12 or 24, in V.
    back: length of the cable back, 0 where the frame carries the current, in m.
    share: of the voltage that the cable may take; else 0.20 V for each 100 A and 5 % at most, in %.
    temperature: of the copper, in degC.
    Raises NotPossible where no gauge from 4/0 to 40 would do.
    Source: Ohm's law with annealed copper of 0.017241 ohm for a metre of 1 mm² at 20 °C; limit of
    0.20 V for each 100 A: US Army TM 10-3930-671-24, F-303; 5 %: common practice, no source.

    >>> cable = starter_cable(current=300, out=3.048, system=6, share=4)
    >>> cable.working.answers["gauge"].value
    '2/0'
    """
    w = Working()
    w.given("I", current, "A", meaning="current")
    w.given("U", system, "V", meaning="voltage of the battery")
    most = _allowed(w, current, system, share)
    rho = resistivity(w, temperature)
    run = length(w, out, back)
    least = w.step("A_m", "ρ·L·I/U_m", rho * run * current / most, "mm2", meaning="least copper",
                   answer="least area")  # fmt: skip
    across = w.step("d_m", "√(4·A_m/π)/25.4", sqrt(4 * least / pi) / 25.4, "in")
    number = nearest_gauge(across)
    gauge = _sold(floor(number + 1e-9))  # a need of exactly one gauge is met by it
    if gauge < THICKEST:
        rule = f"would need {least:.3g} mm2 of copper, more than 4/0"
        raise NotPossible("this cable", rule, "make it shorter, or lay two side by side")
    w.step("n_m", "36 − 39·ln(d_m/0.005)/ln(92)", number, "", meaning="thinnest as a number")
    w.tell("gauge", named(gauge))
    _with_gauge(w, gauge, rho * run * current, system)
    return Worked(least, w)


def _sold(gauge: int) -> int:
    """The gauge, or the next thicker one that shops keep: odd ones above 1 are hardly sold."""
    return min(gauge - 1 if gauge > 2 and gauge % 2 else gauge, THINNEST)


def _allowed(w: Working, current: float, system: float, share: float | None) -> float:
    """The voltage that may be lost, kept as U_m."""
    if share is None:
        w.note(f"No share is given: 0.20 V for each 100 A may be lost, and {USUAL:g} % at most.")
        most = min(0.2 * current / 100, USUAL / 100 * system)
        w.step("U_m", f"min(0.2·I/100, {USUAL:g}/100·U)", most, "V", meaning="may be lost")
    else:
        w.given("s", share, "%", meaning="share that may be lost")
        most = w.step("U_m", "s/100·U", share / 100 * system, "V", meaning="may be lost")
    if most >= system:
        rule = f"would be the whole {system:g} V"
        raise NotPossible(f"a drop of {most:g} V", rule, "name a share, or look at the current")
    return most


def _with_gauge(w: Working, gauge: int, per_area: float, system: float) -> None:
    """What the chosen gauge loses."""
    w.given("n", gauge, "", meaning=f"gauge {named(gauge)} as a number")
    d = w.step("d", "0.005·92^((36 − n)/39)", 0.005 * 92 ** ((36 - gauge) / 39), "in")
    area = w.step("A", "π/4·(25.4·d)²", pi / 4 * (25.4 * d) ** 2, "mm2", answer="area")
    drop = w.step("ΔU", "ρ·L·I/A", per_area / area, "V", meaning="it loses", answer="drop")
    w.step("x", "100·ΔU/U", 100 * drop / system, "%", meaning="of the voltage", answer="share lost")
