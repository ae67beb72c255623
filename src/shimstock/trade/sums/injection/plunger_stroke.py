from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import (
    ONE_BAR,
    Delivery,
    Modulus,
    Pressure,
    Squeeze,
    shrunk,
    squeezed,
)
from shimstock.trade.sums.injection._line import PipeBore, PipeLength, Space, shut_in


@a_sum(
    example="--plunger '8 mm' --delivery '105 mm3' --pressure '1900 psi' --barrel '3 cc' "
    "--pipe-bore '2 mm' --pipe-length '24 in' --injector '1.5 cc' --squeeze 79e-6",
    cautions=(BOOK_FIRST, HIGH_PRESSURE_FUEL),
)
def plunger_stroke(
    *,
    plunger: Annotated[float, Of("mm", above=0)],
    delivery: Delivery,
    pressure: Pressure,
    start: Pressure = ONE_BAR,
    barrel: Space = 0.0,
    pipe_bore: PipeBore = 0.0,
    pipe_length: PipeLength = 0.0,
    injector: Space = 0.0,
    squeeze: Squeeze | None = None,
    modulus: Modulus | None = None,
) -> Worked[float]:
    """Working stroke of a pump's plunger: what it delivers, and what squeezing the fuel takes.

    Leaks past the plunger and the swelling of the pipe are left out.

    plunger: diameter of the plunger, in mm.
    delivery: that leaves the injector at each stroke, in mm3.
    pressure: that the fuel is brought to, in bar.
    start: pressure before, in bar.
    barrel: fuel above the plunger at the start of the stroke, in cc.
    pipe_bore: inside diameter of the pipe, in mm.
    pipe_length: of the pipe, in mm.
    injector: fuel in the injector, in cc.
    squeeze: share that the fuel shrinks for each bar, in per.bar.
    modulus: bulk modulus, instead of the squeeze, in MPa.
    Raises NotPossible where the pressure does not rise, or the squeeze is not given once.
    Source: H. N. Gupta, Fundamentals of IC Engines, example 10.5, page 336.

    >>> round(plunger_stroke(plunger=7.5, delivery=100, pressure=180, barrel=6.5, pipe_bore=3,
    ...     pipe_length=650, injector=2.5, squeeze=78.5e-6).value, 2)
    6.59
    """
    w = Working()
    volume = shut_in(w, barrel, pipe_bore, pipe_length, injector)
    beta = squeezed(w, squeeze, modulus)
    less = shrunk(w, volume, beta, pressure, start)
    w.given("q", delivery, "mm3", meaning="delivered")
    moved = w.step("V_s", "q + ΔV", delivery + less, "mm3", meaning="swept", answer="swept")
    w.given("d", plunger, "mm", meaning="plunger")
    stroke = moved / (pi / 4 * plunger**2)
    w.step("s", "V_s/(π/4·d²)", stroke, "mm", meaning="working stroke", answer="stroke")
    return Worked(stroke, w)
