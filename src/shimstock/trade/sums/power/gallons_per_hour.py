from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._plausible_work import FuelKind, tell_plausible


@a_sum(example="--power '38 hp' --work '15.2 hp.h/gal' --kind diesel")
def gallons_per_hour(
    *,
    power: Annotated[float, Of("hp", above=0)],
    work: Annotated[float, Of("hp.h/gal", above=0)],
    kind: FuelKind | None = None,
) -> Worked[float]:
    """Fuel that a power takes at so much work from a US gallon.

    power: power at the belt, power take-off or drawbar, in hp.
    work: work from a gallon, as tests print it, in hp.h/gal.
    kind: kind of fuel, to see whether official tests ever saw the like, no unit.
    Source: definition; range of official tests 1920 to 1984 from a published compilation quoted in
    a forum.

    >>> round(gallons_per_hour(power=200, work=17).value, 2)
    11.76
    """
    w = Working()
    w.given("P", power, "hp", meaning="power")
    w.given("a", work, "hp.h/gal", meaning="work from a gallon")
    volume = w.step("q", "P/a", power / work, "gal/h", meaning="fuel by volume", answer="volume")
    tell_plausible(w, work, kind)
    return Worked(volume, w)
