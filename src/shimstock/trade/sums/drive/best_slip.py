from dataclasses import dataclass

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.drive._brixius import Number, Soil, mobility, ratios

NARROWINGS = 80
GOLDEN = 0.6180339887498949


@dataclass(frozen=True)
class Best:
    """Slip in % at which a wheel pulls best, and the tractive efficiency in % there."""

    slip: float
    efficiency: float


@a_sum(example="--soil firm")
def best_slip(*, soil: Soil, number: Number | None = None) -> Worked[Best]:
    """Slip at which a driven wheel wastes least on a soil.

    soil: hard, firm, tilled or soft, or measured with its mobility number, no unit.
    number: mobility number of a measured soil, no unit.
    Raises NotPossible where the wheel cannot pull on that soil at all.
    Source: Brixius, ASABE D497, from memory; highest tractive efficiency by golden section.

    >>> round(best_slip(soil="firm").value.slip, 1)
    8.5
    """
    w = Working()
    n = mobility(w, soil, number)
    found = _best(n)
    gross, _, net, efficiency = ratios(n, found)
    if net <= 0:
        rule = "is so soft that the wheel never pulls"
        raise NotPossible(f"a soil of mobility number {n:g}", rule, "wait for drier ground")
    w.given("s_0", 100 * found, "%", meaning="slip of the highest efficiency, by golden section")
    w.step("s", "s_0", 100 * found, "%", meaning="best slip", answer="slip")
    shown = "0.88·(1 − exp(−0.1·B_n))·(1 − exp(−7.5·s/100)) + 0.04"
    w.step("μ_g", shown, gross, "", meaning="gross traction")
    shown = "μ_g − 1/B_n − 0.04 − 0.5·s/100/√(B_n)"
    w.step("μ", shown, net, "", meaning="net traction", answer="net traction")
    w.step("η", "100·(1 − s/100)·μ/μ_g", 100 * efficiency, "%", answer="tractive efficiency")
    return Worked(Best(100 * found, 100 * efficiency), w)


def _best(number: float) -> float:
    """Slip share of the highest tractive efficiency."""
    low, high = 0.001, 0.6
    for _ in range(NARROWINGS):
        left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
        better_left = ratios(number, left)[3] > ratios(number, right)[3]
        low, high = (low, right) if better_left else (left, high)
    return (low + high) / 2
