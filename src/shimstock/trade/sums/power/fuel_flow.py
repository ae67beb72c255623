from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._fuel import Density


@a_sum(example="--weight '16.2 lb' --time '20 min'", cautions=(RUNNING, EXHAUST))
def fuel_flow(
    *,
    time: Annotated[float, Of("min", above=0)],
    weight: Annotated[float, Of("kg", above=0, most=10_000)] | None = None,
    volume: Annotated[float, Of("l", above=0, most=10_000)] | None = None,
    density: Density | None = None,
) -> Worked[float]:
    """Fuel for an hour from what was used in a timed run, by weight or by volume.

    time: how long the run took, in min.
    weight: fuel used, by weight, in kg.
    volume: fuel used, by volume, in l.
    density: of the fuel, to turn one into the other, in g/cc.
    Raises NotPossible where not exactly one of weight and volume is given.
    Source: definition.

    >>> round(fuel_flow(time=20, weight=5.4).value, 2)
    16.2
    """
    if (weight is None) == (volume is None):
        raise NotPossible("the fuel", "must be given by weight or by volume", "give one of the two")
    w = Working()
    w.given("τ", time, "min", meaning="time of the run")
    if density is not None:
        w.given("ρ", density, "g/cc", meaning="density of the fuel")
    if weight is not None:
        w.given("M", weight, "kg", meaning="fuel used")
        flow = w.step("m", "60·M/τ", 60 * weight / time, "kg/h", answer="weight")
        if density is not None:
            w.step("q", "m/ρ", flow / density, "l/h", answer="volume")
        return Worked(flow, w)
    used = w.given("Q", volume or 0, "l", meaning="fuel used")
    flow = w.step("q", "60·Q/τ", 60 * used / time, "l/h", answer="volume")
    if density is not None:
        w.step("m", "q·ρ", flow * density, "kg/h", answer="weight")
    return Worked(flow, w)
