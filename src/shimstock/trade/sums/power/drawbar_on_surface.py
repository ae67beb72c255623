from typing import Annotated, Literal

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

Surface = Literal["concrete", "firm", "tilled", "soft"]
Drive = Literal["two-wheel", "track"]
# Drawbar power by power take-off power, per cent, for each drive and surface.
PASSED: dict[str, dict[str, int]] = {
    "two-wheel": {"concrete": 87, "firm": 72, "tilled": 67, "soft": 55},
    "track": {"concrete": 88, "firm": 82, "tilled": 80, "soft": 78},
}


@a_sum(example="--pto '38 hp' --surface firm --drive two-wheel")
def drawbar_on_surface(
    *,
    pto: Annotated[float, Of("kW", above=0)],
    surface: Surface,
    drive: Drive = "two-wheel",
) -> Worked[float]:
    """Drawbar power to expect on a surface from the power at the power take-off.

    An estimate of low confidence: the shares are remembered, not read, and good to 0.05.

    pto: power at the power take-off, in kW.
    surface: concrete, firm soil, tilled soil or soft soil, no unit.
    drive: two-wheel drive or track, no unit.
    Source: ASABE D497, figure 1, power relationships, from memory.

    >>> drawbar_on_surface(pto=100, surface="firm").value
    72.0
    """
    w = Working()
    w.note("An estimate of low confidence, good to five parts in a hundred: a test tells.")
    share = PASSED[drive][surface]
    w.given("P_p", pto, "kW", meaning="power take-off power")
    w.given("c", share, "%", meaning=f"passed on, {drive} drive on {surface}")
    power = share / 100 * pto
    w.step("P_d", "c/100·P_p", power, "kW", meaning="drawbar power", answer="drawbar")
    w.step("P_n", "P_p/0.9", pto / 0.9, "kW", meaning="net flywheel power", answer="flywheel")
    return Worked(power, w)
