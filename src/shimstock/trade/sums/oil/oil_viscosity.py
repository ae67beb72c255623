from math import exp, log
from typing import Annotated

from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import USED_OIL
from shimstock.trade.sums.declare import Of, a_sum

Viscosity = Annotated[float, Of("mm2/s", least=0.5, most=2e7, known=(2, 2e7))]
Temperature = Annotated[float, Of("degC", least=-70, most=370)]
THICKEST = 2e7
CLOSEST = 1.0  # degrees between the two known points; less says nothing about the slope


@a_sum(example="--cold 100 --hot 11.2 --at '60 degC'", cautions=(USED_OIL,))
def oil_viscosity(
    *,
    cold: Viscosity,
    hot: Viscosity,
    at: Temperature,
    cold_at: Temperature = 40,
    hot_at: Temperature = 100,
) -> Worked[float]:
    """Viscosity of an oil at a temperature, from its viscosities at two others.

    Neither wax, fuel in the oil nor polymer in a multigrade is counted: below about 0 °C an oil
    may be far thicker than this.

    cold: viscosity at the lower known temperature, in mm2/s.
    hot: viscosity at the higher known temperature, in mm2/s.
    at: temperature that the viscosity is wanted at, in degC.
    cold_at: lower known temperature, 40 where a sheet says nothing else, in degC.
    hot_at: higher known temperature, 100 where a sheet says nothing else, in degC.
    Raises NotPossible where the two points are swapped or too near, or the result is beyond the
    chart's 20 million mm2/s.
    Source: ASTM D341, log log (ν + 0.7) = A − B·log T with T in K, for 2 mm²/s and up, from memory.

    >>> round(oil_viscosity(cold=100, hot=11.2, at=40).value, 6)
    100.0
    """
    _in_order(cold, hot, cold_at, hot_at)
    w = Working()
    w.given("ν_1", cold, "mm2/s", meaning="at the lower temperature")
    w.given("ν_2", hot, "mm2/s", meaning="at the higher temperature")
    t_1 = _kelvin(w, "1", cold_at)
    t_2 = _kelvin(w, "2", hot_at)
    t = _kelvin(w, "x", at)
    w_1 = w.step("W_1", "ln(ln(ν_1 + 0.7))", log(log(cold + 0.7)), "")
    w_2 = w.step("W_2", "ln(ln(ν_2 + 0.7))", log(log(hot + 0.7)), "")
    spread = w.step("l", "ln(T_2/T_1)", log(t_2 / t_1), "")
    slope = w.step("B", "(W_1 − W_2)/l", (w_1 - w_2) / spread, "")
    w_x = w.step("W_x", "W_1 − B·ln(T_x/T_1)", w_1 - slope * log(t / t_1), "")
    return Worked(_viscosity(w, w_x, at), w)


def _viscosity(w: Working, w_x: float, at: float) -> float:
    """Back from the double logarithm. Raises NotPossible beyond the chart."""
    if w_x > log(log(THICKEST + 0.7)):
        rule = "is colder than the chart goes: the oil would be thicker than 20 million mm²/s"
        raise NotPossible(
            f"at {written(at)} degC", rule, "take a temperature nearer to the two known"
        )
    value = exp(exp(w_x)) - 0.7
    if value < 2:
        w.caution("Below 2 mm²/s this extrapolates: the formula holds from 2 mm²/s up.")
    return w.step("ν", "exp(exp(W_x)) − 0.7", value, "mm2/s", answer="viscosity")


def _kelvin(w: Working, mark: str, celsius: float) -> float:
    w.given(f"t_{mark}", celsius, "degC")
    return w.step(f"T_{mark}", f"t_{mark} + 273.15", celsius + 273.15, "", meaning="in kelvin")


def _in_order(cold: float, hot: float, cold_at: float, hot_at: float) -> None:
    if hot_at - cold_at < CLOSEST:
        raise NotPossible(
            f"hot at {written(hot_at)} degC",
            f"must be at least 1 °C above cold at, {written(cold_at)} degC",
            "look whether the two are swapped",
        )
    if hot >= cold:
        raise NotPossible(
            f"hot {hot:g} mm2/s",
            f"must be less than cold, {cold:g} mm2/s",
            "oil thins as it warms; look whether the two are swapped",
        )
