"""The diesel correction α = fa^fm, in which two standards differ by exponents and by a bound."""

from dataclasses import dataclass
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of
from shimstock.trade.sums.power._air import (
    corrected,
    dry_pressure,
    kelvin,
    tell_range,
)
from shimstock.trade.sums.power._cycle import Cycle, turns

Boost = Annotated[float, Of("", least=1, most=10)]
FuelPerLitre = Annotated[float, Of("", above=0, most=1000)]
FuelRate = Annotated[float, Of("g/s", above=0)]
Speed = Annotated[float, Of("rpm", above=0)]
Aspiration = Literal["natural", "turbo", "turbo air-cooled", "turbo liquid-cooled"]


@dataclass(frozen=True)
class Standard:
    """Its name, exponents of dry pressure and temperature by aspiration, and least of fm."""

    name: str
    exponents: dict[str, tuple[float, float]]
    least: float
    from_q: float


@dataclass(frozen=True)
class Fuel:
    """Fuel for each litre and cycle as given, or what it is worked out from."""

    per_litre: float | None
    rate: float | None
    displacement: float | None
    speed: float | None
    cycle: Cycle
    boost: float


@dataclass(frozen=True)
class Air:
    """What the engine breathed."""

    pressure: float
    temperature: float
    humidity: float | None


def correction(
    w: Working, standard: Standard, air: Air, fuel: Fuel, aspiration: str, power: float | None
) -> float:
    """The correction α and, where the power is known, the corrected power."""
    w.given("t", air.temperature, "degC", meaning="air temperature")
    dry = dry_pressure(w, air.pressure, air.temperature, air.humidity)
    absolute = kelvin(w, air.temperature)
    a, b = standard.exponents[aspiration]
    w.note(f"{standard.name}, {aspiration} aspiration: exponents {a:g} and {b:g}.")
    f_a = (99 / dry) ** a * (absolute / 298) ** b
    pressure_term = "99/p_d" if a == 1 else f"(99/p_d)^{a:g}"
    w.step("f_a", f"{pressure_term}·(T/298)^{b:g}", f_a, "", meaning="air factor",
           answer="air factor")  # fmt: skip
    f_m = engine_factor(w, standard, fuel)
    factor: float = f_a**f_m
    w.step("α", "f_a^f_m", factor, "", meaning="correction", answer="correction")
    corrected(w, "α", factor, power)
    tell_range(
        w,
        standard.name,
        (10 <= air.temperature <= 40, "air of 10 to 40 °C"),
        (80 <= dry <= 110, "80 to 110 kPa dry"),
        (0.9 <= factor <= 1.1, "a correction of 0.9 to 1.1"),
    )
    return factor


def engine_factor(w: Working, standard: Standard, fuel: Fuel) -> float:
    """The factor f_m from the fuel for each litre, cycle and boost."""
    q = _per_litre(w, fuel)
    w.given("r", fuel.boost, "", meaning="boost pressure ratio, 1 without a blower")
    q_c = w.step("q_c", "q/r", q / fuel.boost, "", meaning="mg of fuel for each litre of air")
    low, from_q = standard.least, standard.from_q
    if not from_q <= q_c <= 65:
        w.note(f"{standard.name}: below {from_q:g} mg/l f_m stays {low:g}, above 65 it stays 1.2.")
    f_m = min(1.2, max(low, 0.036 * q_c - 1.14))
    shown = f"min(1.2, max({low:g}, 0.036·q_c − 1.14))"
    return w.step("f_m", shown, f_m, "", meaning="engine factor", answer="engine factor")


def _per_litre(w: Working, fuel: Fuel) -> float:
    meaning = "mg of fuel for each litre and cycle"
    if fuel.per_litre is not None:
        if fuel.rate is not None:
            raise NotPossible("fuel and fuel per litre", "are each enough alone", "leave one out")
        return w.given("q", fuel.per_litre, "", meaning=meaning)
    if fuel.rate is None or fuel.displacement is None or fuel.speed is None:
        rule = "is needed, or fuel, displacement and speed together"
        raise NotPossible("fuel per litre", rule, "give one or the other")
    w.given("m", fuel.rate, "g/s", meaning="fuel")
    w.given("V", fuel.displacement, "l", meaning="swept volume")
    w.given("n", fuel.speed, "rpm", meaning="speed")
    i = turns(w, fuel.cycle)
    q = 60000 * i * fuel.rate / (fuel.displacement * fuel.speed)
    return w.step("q", "60000·i·m/(V·n)", q, "", meaning=meaning, answer="fuel per litre")
