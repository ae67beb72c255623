from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR, HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.injection._fuel import DIESEL, Cycle, Cylinders, Density, Speed, turns


@a_sum(
    example="--power '38 hp' --consumption '0.45 lb/hp.h' --cylinders 2 --speed 975 --strokes 200",
    cautions=(BOOK_FIRST, GOVERNOR, HIGH_PRESSURE_FUEL),
)
def delivery_per_stroke(
    *,
    speed: Speed,
    cylinders: Cylinders,
    power: Annotated[float, Of("kW", above=0)] | None = None,
    consumption: Annotated[float, Of("g/kWh", above=0)] | None = None,
    fuel: Annotated[float, Of("kg/h", above=0)] | None = None,
    density: Density = DIESEL,
    cycle: Cycle = "four-stroke",
    strokes: Annotated[int, Of("", least=1)] | None = None,
) -> Worked[float]:
    """Fuel that a pump must deliver at each stroke, from power and consumption or from fuel burnt.

    speed: of the crankshaft, in rpm.
    cylinders: how many the engine has, a count.
    power: of the whole engine, in kW.
    consumption: fuel for its work, in g/kWh.
    fuel: burnt by the whole engine, instead of power and consumption, in kg/h.
    density: of the fuel, else that of a middling diesel, in g/cc.
    cycle: whether each cylinder is fed every second turn or every turn, no unit.
    strokes: caught in the glass on the bench, a count.
    Raises NotPossible where the fuel burnt is not given, or given twice.
    Source: Rajput, Textbook of Internal Combustion Engines, example 12.1, page 421,
    q = P·b·i/(60·n·z·ρ).

    >>> round(delivery_per_stroke(power=89, consumption=245, cylinders=6, speed=2500).value, 1)
    57.7
    """
    w = Working()
    flow = _flow(w, power, consumption, fuel)
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    w.given("z", cylinders, "", meaning="cylinders")
    w.given("ρ", density, "g/cc", meaning="density of the fuel")
    i = turns(w, cycle)
    often = w.step("N", "60·n·z/i", 60 * speed * cylinders / i, "", meaning="injections an hour")
    each = w.step("m_i", "1000000·m/N", 1e6 * flow / often, "mg", meaning="each stroke",
                  answer="weight")  # fmt: skip
    volume = w.step("q", "m_i/ρ", each / density, "mm3", meaning="each stroke", answer="volume")
    if strokes is not None:
        w.given("s", strokes, "", meaning="strokes into the glass")
        w.step("Q", "s·q/1000", strokes * volume / 1000, "cc", answer="in the glass")
    return Worked(volume, w)


def _flow(w: Working, power: float | None, consumption: float | None, fuel: float | None) -> float:
    """Fuel burnt in kg/h, kept as m."""
    if fuel is not None:
        if power is not None or consumption is not None:
            rule = "are each enough alone"
            raise NotPossible("fuel, and power with consumption,", rule, "leave one out")
        return w.given("m", fuel, "kg/h", meaning="fuel burnt")
    if power is None or consumption is None:
        rule = "is needed, or power and consumption together"
        raise NotPossible("fuel", rule, "give one or the other")
    w.given("P", power, "kW", meaning="power")
    w.given("b", consumption, "g/kWh", meaning="consumption")
    return w.step("m", "P·b/1000", power * consumption / 1000, "kg/h", meaning="fuel burnt")
