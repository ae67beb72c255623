from math import sqrt
from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Height, air_pressure

STANDARD, TEXTBOOK = "ISO 2533", "textbook"


@a_sum(example="--mixture 14 --height '1500 m' --temperature '25 degC'", cautions=(BOOK_FIRST,))
def mixture_at_height(
    *,
    mixture: Annotated[float, Of("", above=0)],
    height: Height,
    temperature: Annotated[float, Of("degC", least=-60, most=60)] = 15.0,
    cooling: Annotated[float, Of("K", least=0, most=10)] = 6.5,
    pressure: Literal["ISO 2533", "textbook"] = "ISO 2533",
    scale: Annotated[float, Of("m", least=10_000, most=30_000)] = 19_300.0,
) -> Worked[float]:
    """How rich a carburettor set at the sea runs at a height: kilograms of air for one of petrol.

    The rule of the textbooks, p = p_0·10^(−h/19300), lies 2 to 3 per cent above the standard
    atmosphere at 4000 m.

    mixture: air for each unit of petrol by weight at the sea, no unit.
    height: above the sea, in m.
    temperature: of the air at the sea, in degC.
    cooling: of the air for each 1000 m, in K.
    pressure: by the standard atmosphere, or by the rule of the textbooks, no unit.
    scale: height over which that rule lets the pressure fall to a tenth, in m.
    Source: mixture ∝ √ρ; Rajput, Textbook of Internal Combustion Engines, example 11.11; pressure
    by ISO 2533 or by the rule of that book.

    >>> round(mixture_at_height(mixture=14, height=4500, temperature=25, cooling=6.4,
    ...                         pressure="textbook").value, 2)
    11.26
    """
    w = Working()
    w.given("A_0", mixture, "", meaning="air for petrol at the sea")
    share = _pressure_share(w, height, scale if pressure == TEXTBOOK else None)
    w.given("t", temperature, "degC", meaning="air at the sea")
    w.given("c", cooling, "K", meaning="cooler for each 1000 m")
    sea = temperature + 273.15
    cold = sea - cooling * height / 1000
    w.step("T_h", "t + 273.15 − c·h/1000", cold, "K", meaning="air at the height")
    density = w.step("q", "q_p·(t + 273.15)/T_h", share * sea / cold, "", meaning="of the density")
    leaner = mixture * sqrt(density)
    w.step("A_h", "A_0·√(q)", leaner, "", meaning="air for petrol at the height", answer="mixture")
    return Worked(leaner, w)


def _pressure_share(w: Working, height: float, scale: float | None) -> float:
    """Share of the pressure at the sea, kept as q_p: of the standard, or by the textbooks' rule."""
    if scale is None:
        air = air_pressure(w, height)
        w.note(f"Pressure by {STANDARD}, the standard atmosphere.")
        return w.step("q_p", "p_h/101.325", air / 101.325, "", meaning="share of the pressure")
    w.given("h", height, "m", meaning="height above the sea")
    w.given("H", scale, "m", meaning="height of a tenth of the pressure")
    w.note("Pressure by the rule of the textbooks, above the standard atmosphere up there.")
    return w.step("q_p", "10^(−h/H)", 10 ** (-height / scale), "", meaning="share of the pressure")
