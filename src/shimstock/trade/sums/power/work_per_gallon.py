from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._plausible_work import FuelKind, tell_plausible


@a_sum(example="--power '38 hp' --volume '2.6 gal/h' --kind diesel")
def work_per_gallon(
    *,
    power: Annotated[float, Of("hp", above=0)],
    volume: Annotated[float, Of("gal/h", above=0)],
    kind: FuelKind | None = None,
) -> Worked[float]:
    """Work from a US gallon of fuel, as tractor tests print it.

    power: power at the belt, power take-off or drawbar, in hp.
    volume: fuel taken, in gal/h.
    kind: kind of fuel, to see whether official tests ever saw the like, no unit.
    Source: definition; range of official tests 1920 to 1984 from a published compilation quoted in
    a forum.

    >>> round(work_per_gallon(power=38, volume=2.5).value, 2)
    15.2
    """
    w = Working()
    w.given("P", power, "hp", meaning="power")
    w.given("q", volume, "gal/h", meaning="fuel by volume")
    work = w.step("a", "P/q", power / volume, "hp.h/gal", meaning="work from a gallon",
                  answer="work")  # fmt: skip
    tell_plausible(w, work, kind)
    return Worked(work, w)
