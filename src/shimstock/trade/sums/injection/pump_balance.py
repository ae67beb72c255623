from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR, HIGH_PRESSURE_FUEL
from shimstock.trade.sums.declare import Of, a_sum

NEARLY = 1e-12  # share of the limit that rounding may add where the spread just meets it
TEST_PLAN = (
    "The limit is that of the maker's test plan for this very pump, at each of its speeds and "
    "rack settings; there is none in this sum. Deliveries are set on the diesel shop's bench."
)
Share = Literal["largest", "mean"]


@dataclass(frozen=True)
class Balance:
    """How far the deliveries spread in per cent, and whether that is near enough."""

    spread: float
    verdict: str


@a_sum(
    example="--deliveries '24.2, 21.6 cc' --limit '3 %' --good-to '0.2 cc'",
    cautions=(TEST_PLAN, GOVERNOR, HIGH_PRESSURE_FUEL),
)
def pump_balance(
    *,
    deliveries: Annotated[Sequence[float], Of("cc", least=0)],
    limit: Annotated[float, Of("%", least=0, below=100)] | None = None,
    good_to: Annotated[float, Of("cc", above=0)] | None = None,
    of: Share = "largest",
) -> Worked[Balance]:
    """How far the deliveries of pumps or elements differ, held against the book's limit.

    As a share of the largest, as a book's pair limit counts; or of the mean, where the test plan
    counts so. Say which when two spreads are compared.

    deliveries: one of each pump, caught over the same number of strokes, in cc.
    limit: that the maker's book or test plan gives for the spread, in %.
    good_to: what one glass can be read to, plus or minus, in cc.
    of: what the spread is a share of, no unit.
    Raises NotPossible where fewer than two are given, or none delivers.
    Source: (largest − smallest)/largest, common practice, no source; JCGM 100:2008, 5.1.2, for what
    the glass leaves open.

    >>> pump_balance(deliveries=[24.2, 21.6], limit=3).value.verdict
    'not a pair'
    """
    high = max(deliveries, default=0.0)
    if len(deliveries) < 2:
        raise NotPossible("deliveries", "of at least two pumps are compared", "type one of each")
    if high <= 0:
        raise NotPossible("deliveries", "are all nothing", "look for air, rack and stop first")
    w = Working()
    low, mean = _from_the_mean(w, deliveries)
    divisor, value = ("a", high) if of == "largest" else ("m", mean)
    spread = 100 * (high - low) / value
    w.step("D", f"100·(a − b)/{divisor}", spread, "%", meaning=f"of the {of}", answer="spread")
    w.step("S", "100·b/a", 100 * low / high, "%", answer="smallest of largest")
    w.tell("share of", f"the {of}")
    open_ = 0.0 if good_to is None else _left_open(w, good_to, deliveries, of)
    return Worked(Balance(spread, _judged(w, spread, limit, open_)), w)


def _from_the_mean(w: Working, deliveries: Sequence[float]) -> tuple[float, float]:
    """Smallest and mean delivery, kept as b and m, the largest as a; and each against the mean."""
    names = [f"q_{i}" for i in range(1, len(deliveries) + 1)]
    for i, (name, each) in enumerate(zip(names, deliveries, strict=True), 1):
        w.given(name, each, "cc", meaning=f"pump {i}")
    every = ", ".join(names)
    w.step("a", f"max({every})", max(deliveries), "cc", meaning="largest")
    low = w.step("b", f"min({every})", min(deliveries), "cc", meaning="smallest")
    mean = sum(deliveries) / len(deliveries)
    w.step("m", f"({' + '.join(names)})/{len(names)}", mean, "cc", meaning="mean", answer="mean")
    for i, (name, each) in enumerate(zip(names, deliveries, strict=True), 1):
        off = 100 * (each - mean) / mean
        w.step(f"D_{i}", f"100·({name} − m)/m", off, "%", answer=f"pump {i} from the mean")
    return low, mean


def _left_open(w: Working, good_to: float, deliveries: Sequence[float], of: Share) -> float:
    """How far the spread may be off in per cent, as each glass may be, kept as U."""
    w.given("g", good_to, "cc", meaning="a glass is read to ±")
    high, low, pumps = max(deliveries), min(deliveries), len(deliveries)
    if of == "largest":
        far = 100 * good_to / high * sqrt(1 + (low / high) ** 2)
        return w.step("U", "100·g/a·√(1 + (b/a)²)", far, "%", answer="plus or minus")
    mean = sum(deliveries) / pumps
    share = (high - low) / mean
    far = 100 * good_to / mean * sqrt(2 + share**2 / pumps)
    shown = f"100·g/m·√(2 + (D/100)²/{pumps})"
    return w.step("U", shown, far, "%", answer="plus or minus")


def _judged(w: Working, spread: float, limit: float | None, far: float) -> str:
    """Beyond the limit by more than the glasses leave open is no pair; less is borderline."""
    verdict = "not judged: type the book's limit"
    if limit is not None:
        w.given("D_max", limit, "%", meaning="limit of the book")
        most = limit * (1 + NEARLY)
        verdict = "near enough" if spread <= most else "not a pair"
        if most < spread <= most + far:
            verdict = "borderline: the glasses cannot tell, measure again"
    w.tell("verdict", verdict)
    return verdict
