from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_OIL
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Flow:
    """Theoretical and real flow in l/min, and the volumetric efficiency in %."""

    theory: float
    real: float
    efficiency: float


@a_sum(example="--outside '1.75 in' --inside '1.25 in' --width '0.75 in' --speed 975 "
       "--efficiency 90 --in gal/min", cautions=(HIGH_PRESSURE_OIL,))  # fmt: skip
def pump_flow(
    *,
    outside: Annotated[float, Of("mm", above=0, most=500)],
    inside: Annotated[float, Of("mm", above=0, most=500)],
    width: Annotated[float, Of("mm", above=0, most=500)],
    speed: Annotated[float, Of("rpm", above=0)],
    efficiency: Annotated[float, Of("%", above=0, most=100)] | None = None,
    measured: Annotated[float, Of("l/min", least=0)] | None = None,
) -> Worked[Flow]:
    """Flow of a gear pump from its gears, and how much of it a worn pump still gives.

    outside: diameter over the teeth of one gear, in mm.
    inside: diameter of the bottom of the teeth, in mm.
    width: of the teeth, in mm.
    speed: of the pump, in rpm.
    efficiency: volumetric, where the real flow is wanted, in %.
    measured: flow as measured, where the efficiency is wanted, in l/min.
    Raises NotPossible where both or neither are given, or the inside is not the smaller.
    Source: Esposito, Fluid Power with Applications, examples 5.1 and 5.2, V = π/4·(D² − d²)·L.

    >>> got = pump_flow(outside=75, inside=50, width=25, speed=1000, efficiency=90).value
    >>> round(got.real, 2)
    55.22
    """
    if (efficiency is None) == (measured is None):
        rule = "or the flow measured: exactly one is wanted"
        raise NotPossible("the efficiency", rule, "type --efficiency or --measured")
    if inside >= outside:
        rule = f"must be less than the outside, {outside:g} mm"
        raise NotPossible(f"inside {inside:g} mm", rule, "look whether the two are swapped")
    w = Working()
    w.given("D", outside, "mm", meaning="over the teeth")
    w.given("d", inside, "mm", meaning="bottom of the teeth")
    w.given("L", width, "mm", meaning="width")
    w.given("n", speed, "rpm", meaning="speed")
    volume = pi / 4 * (outside**2 - inside**2) * width / 1000
    w.step("V", "π/4·(D² − d²)·L/1000", volume, "cc", meaning="each turn", answer="each turn")
    theory = w.step("Q_t", "V·n/1000", volume * speed / 1000, "l/min", answer="theory")
    if efficiency is not None:
        share = w.given("η", efficiency, "%", meaning="volumetric efficiency")
        real = w.step("Q", "Q_t·η/100", theory * share / 100, "l/min", answer="flow")
    else:
        real = w.given("Q", measured or 0.0, "l/min", meaning="measured")
        share = w.step("η", "100·Q/Q_t", 100 * real / theory, "%", answer="efficiency")
        if share > 100:
            w.note("More than 100 %: look at the measures, the speed and the glass again.")
    return Worked(Flow(theory, real, share), w)
