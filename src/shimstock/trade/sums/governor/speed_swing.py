from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import GOVERNOR
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Swing:
    """Momentary and lasting change of speed, in per cent of the speed before."""

    momentary: float
    lasting: float


@a_sum(example="--before 975 --peak 1130 --settled 1090", cautions=(GOVERNOR,))
def speed_swing(
    *,
    before: Annotated[float, Of("rpm", above=0)],
    peak: Annotated[float, Of("rpm", least=0)],
    settled: Annotated[float, Of("rpm", least=0)],
) -> Worked[Swing]:
    """How far the speed swings when load is thrown off or on, at once and for good.

    Both are divided by the speed before, the initial one, unlike the droop of the standards.

    before: speed before the load changes, in rpm.
    peak: highest speed after load is thrown off, or lowest after it is thrown on, in rpm.
    settled: speed once it is steady again, in rpm.
    Source: industrial diesel service manual, momentary and steady speed change.

    >>> got = speed_swing(before=1500, peak=1620, settled=1575).value
    >>> got.momentary, got.lasting
    (8.0, 5.0)
    """
    w = Working()
    w.given("n_1", before, "rpm", meaning="before")
    w.given("n_2", peak, "rpm", meaning="peak")
    w.given("n_3", settled, "rpm", meaning="settled")
    momentary = 100 * abs(peak - before) / before
    w.step("δ_m", "100·|n_2 − n_1|/n_1", momentary, "%", answer="momentary")
    lasting = 100 * abs(settled - before) / before
    w.step("δ_s", "100·|n_3 − n_1|/n_1", lasting, "%", answer="lasting")
    w.tell("divided by", "initial speed, as a service manual does")
    return Worked(Swing(momentary, lasting), w)
