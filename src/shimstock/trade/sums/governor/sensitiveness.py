from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.governor._weights import Speed, larger


@a_sum(example="--least 290 --most 310")
def sensitiveness(*, least: Speed, most: Speed) -> Worked[float]:
    """Range of a governor's speeds as a share of their mean.

    least: speed with the balls in, in rpm.
    most: speed with the balls out, in rpm.
    Raises NotPossible where the most is not the larger.
    Source: Khurmi and Gupta, Theory of Machines, chapter on governors, 2·(n_2 − n_1)/(n_2 + n_1).

    >>> round(sensitiveness(least=290, most=310).value, 2)
    6.67
    """
    larger("most", most, "the least", least, "rpm")
    w = Working()
    w.given("n_1", least, "rpm", meaning="least speed")
    w.given("n_2", most, "rpm", meaning="most speed")
    mean = w.step("n", "(n_1 + n_2)/2", (least + most) / 2, "rpm", meaning="mean")
    w.step("Δn", "n_2 − n_1", most - least, "rpm", answer="range")
    share = 100 * (most - least) / mean
    w.step("s", "100·Δn/n", share, "%", meaning="of the mean", answer="sensitiveness")
    w.tell("divided by", "mean speed, (least + most)/2")
    return Worked(share, w)
