from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HIGH_PRESSURE_OIL
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Moves:
    """Pressure in psi and speed in ft/s, going out and coming in."""

    out_pressure: float
    out_speed: float
    in_pressure: float
    in_speed: float


@a_sum(example="--bore '3 in' --rod '1 1/4 in' --load '2500 lbf' --flow '8 gal/min'",
       cautions=(HIGH_PRESSURE_OIL,))  # fmt: skip
def cylinder(
    *,
    bore: Annotated[float, Of("in", above=0, most=40)],
    load: Annotated[float, Of("lbf", least=0)],
    flow: Annotated[float, Of("gal/min", least=0)],
    rod: Annotated[float, Of("in", least=0, most=40)] = 0.0,
) -> Worked[Moves]:
    """Pressure that a load asks of a hydraulic cylinder, and how fast a flow moves it, both ways.

    bore: of the cylinder, in inches.
    load: pushed or pulled, in lbf.
    flow: into the cylinder, in gal/min.
    rod: diameter of the rod, in inches; 0 for a ram.
    Raises NotPossible where the rod is not thinner than the bore.
    Source: Esposito, Fluid Power with Applications, example 6.1.

    >>> got = cylinder(bore=2, load=1000, flow=20, rod=1).value
    >>> round(got.out_pressure, 2), round(got.out_speed, 4)
    (318.31, 2.0425)
    """
    if rod >= bore:
        rule = f"must be thinner than the bore, {bore:g} in"
        raise NotPossible(f"rod {rod:g} in", rule, "look whether the two are swapped")
    w = Working()
    w.given("D", bore, "in", meaning="bore")
    w.given("d", rod, "in", meaning="rod")
    w.given("F", load, "lbf", meaning="load")
    w.given("Q", flow, "gal/min", meaning="flow")
    out = _move(w, "_1", "out", "π/4·D²", pi / 4 * bore**2, load, flow)
    back = _move(w, "_2", "in", "π/4·(D² − d²)", pi / 4 * (bore**2 - rod**2), load, flow)
    return Worked(Moves(*out, *back), w)


def _move(
    w: Working, mark: str, way: str, shown: str, area: float, load: float, flow: float
) -> tuple[float, float]:
    """Pressure, speed and power of one way."""
    w.step(f"A{mark}", shown, area, "in2", meaning=f"moving {way}")
    pressure = w.step(f"p{mark}", f"F/A{mark}", load / area, "psi", answer=f"pressure {way}")
    speed = flow * 231 / 60 / area / 12
    w.step(f"v{mark}", f"Q·231/60/A{mark}/12", speed, "ft/s", answer=f"speed {way}")
    w.step(f"P{mark}", f"F·v{mark}/550", load * speed / 550, "hp", answer=f"power {way}")
    return pressure, speed
