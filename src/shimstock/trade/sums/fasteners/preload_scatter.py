from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._films import SCATTER

MOST = 50


@dataclass(frozen=True)
class Scatter:
    """Mean and standard deviation of the pulls."""

    mean: float
    deviation: float


@a_sum(example="--pulls '30.3 kN; 32.5 kN; 33.8 kN; 37.4 kN; 40.5 kN'", cautions=(SCATTER,))
def preload_scatter(
    *, pulls: Annotated[Sequence[float], Of("force", above=0)], unit: str = "mm"
) -> Worked[Scatter]:
    """Mean and scatter of the pulls that one torque gave a few like bolts.

    pulls: pull of each bolt, measured by its stretch, in the force of `unit`.
    unit: unit of the lengths, mm or in; forces follow it.
    Raises NotPossible for fewer than two pulls or more than 50.
    Source: mean and standard deviation of a sample; J. E. Shigley, Mechanical Engineering Design,
    9th edition, table 8-14.

    >>> got = preload_scatter(pulls=[30_000, 34_000, 38_000])
    >>> round(got.value.mean), round(got.value.deviation)
    (34000, 4000)
    """
    n = len(pulls)
    if not 2 <= n <= MOST:
        raise NotPossible(f"{n} pulls", f"must be 2 to {MOST}", "type one for each bolt")
    force, w = coherent(unit).force, Working()
    names = [f"F_{i}" for i in range(1, n + 1)]
    for name, pull in zip(names, pulls, strict=True):
        w.given(name, pull, force)
    w.given("n", n, "", meaning="bolts")
    mean = sum(pulls) / n
    w.step("F_m", f"({' + '.join(names)})/n", mean, force, meaning="mean", answer="mean")
    off = [f"({name} − F_m)²" for name in names]
    square = sum((pull - mean) ** 2 for pull in pulls)
    w.step("q", " + ".join(off), square, "", meaning="squares of what each is off")
    s = w.step("s", "√(q/(n − 1))", sqrt(square / (n - 1)), force, answer="standard deviation")
    w.step("v", "100·s/F_m", 100 * s / mean, "%", meaning="of the mean", answer="scatter")
    return Worked(Scatter(mean, s), w)
