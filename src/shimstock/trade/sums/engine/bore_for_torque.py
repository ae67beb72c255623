from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between


@dataclass(frozen=True)
class Sized:
    """Swept volume in l, and the bore in mm."""

    displacement: float
    bore: float


@a_sum(example="--torque '205 lbf.ft' --mean-pressure '90 psi' --cylinders 2 --stroke-share 1.17")
def bore_for_torque(
    *,
    torque: Annotated[float, Of("N.m", above=0)],
    mean_pressure: Annotated[float, Of("bar", above=0, most=40)],
    cylinders: Annotated[int, Of("", least=1, found="cylinders")],
    stroke_share: Annotated[float, Of("", above=0)] = 1.0,
    cycle: Cycle = "four-stroke",
) -> Worked[Sized]:
    """Swept volume and bore that a torque asks for at a mean effective pressure.

    torque: at the crankshaft, in N.m.
    mean_pressure: brake mean effective pressure, in bar.
    cylinders: how many there are, a count.
    stroke_share: stroke for each unit of bore, no unit.
    cycle: four-stroke or two-stroke, no unit.
    Source: V = 2·π·i·T/p; Rajput, Textbook of Internal Combustion Engines, example 17.4.

    >>> round(bore_for_torque(torque=160, mean_pressure=9.6, cylinders=4).value.bore, 3)
    87.358
    """
    w = Working()
    w.given("T", torque, "N.m", meaning="torque")
    w.given("p", mean_pressure, "bar", meaning="mean effective pressure")
    z = w.given("z", cylinders, "", meaning="cylinders")
    k = w.given("k", stroke_share, "", meaning="stroke for each unit of bore")
    i = turns_between(w, cycle)
    volume = 2 * pi * i * torque / mean_pressure / 100
    w.step("V", "2·π·i·T/p/100", volume, "l", meaning="swept volume", answer="displacement")
    bore = (volume * 1e6 / z / (pi / 4 * k)) ** (1 / 3)
    w.step("D", "(V·1000000/z/(π/4·k))^(1/3)", bore, "mm", meaning="bore", answer="bore")
    return Worked(Sized(volume, bore), w)
