from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

# Litres for each hour and kW of the greatest power take-off power.
MEAN = {"diesel": 0.223, "petrol": 0.305}


@a_sum(example="--pto '38 hp' --hours '220 h' --fuel diesel")
def fuel_annual(
    *,
    pto: Annotated[float, Of("kW", above=0)],
    hours: Annotated[float, Of("h", above=0)] = 1,
    fuel: Literal["diesel", "petrol"] = "diesel",
) -> Worked[float]:
    """Mean fuel of a tractor over a year of mixed work, from its greatest power at the take-off.

    pto: greatest power at the power take-off, in kW.
    hours: hours of work in the year, in h.
    fuel: diesel or petrol, no unit.
    Source: ASAE EP496.3, mean annual fuel, as an extension leaflet by R. Grisso quotes it; petrol
    from memory.

    >>> round(fuel_annual(pto=100).value, 1)
    22.3
    """
    w = Working()
    w.given("P", pto, "kW", meaning="greatest power at the power take-off")
    w.given("τ", hours, "h", meaning="hours of work")
    w.given("k", MEAN[fuel], "l/kWh", meaning=f"mean over the year, {fuel}")
    mean = w.step("Q", "k·P", MEAN[fuel] * pto, "l/h", meaning="mean fuel", answer="mean")
    w.step("Q_a", "Q·τ", mean * hours, "l", meaning="in these hours", answer="total")
    return Worked(mean, w)
