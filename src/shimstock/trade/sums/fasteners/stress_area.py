from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.fasteners._lines import area_lines, thread_lines
from shimstock.trade.sums.fasteners._threads import ThreadText


@a_sum(example="--thread '3/8-16 UNC'")
def stress_area(*, thread: ThreadText) -> Worked[float]:
    """Area of a thread that carries the pull, unified, ISO metric, Whitworth, BA or cycle.

    Inch threads come out in in2, metric and BA threads in mm2.

    thread: the thread, such as 3/8-16 UNC, M10, M12×1.25, 1/2 BSW or 2 BA.
    Source: ASME B1.1, A = π/4·(d − 0.9743/n)²; ISO 898-1, A = π/4·(d − 0.9382·P)²; other forms by
    the same rule, half way between effective and core diameter.

    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> round(stress_area(thread=parse_thread("M10")).value, 1)
    58.0
    """
    w = Working()
    thread_lines(w, thread)
    return Worked(area_lines(w, thread, None, answer="area"), w)
