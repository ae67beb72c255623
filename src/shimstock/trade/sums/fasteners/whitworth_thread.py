from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Read, a_sum
from shimstock.trade.sums.fasteners._threads import Thread, parse_whitworth


@dataclass(frozen=True)
class WhitworthThread:
    """Diameters of a Whitworth thread, in in."""

    core: float
    effective: float


@a_sum(example="--thread '3/8-16 BSW'")
def whitworth_thread(
    *, thread: Annotated[Thread, Read(parse_whitworth, "3/8-16 BSW", found="thread")]
) -> Worked[WhitworthThread]:
    """Core and effective diameter, depth and root radius of a thread of Whitworth form, 55°.

    thread: the thread, such as 3/8-16 BSW, 3/8 BSF or 1/2-12.
    Source: BS 84, Whitworth form: depth 0.640327/n, radius 0.137329/n.

    >>> round(whitworth_thread(thread=parse_whitworth("1/2 BSW")).value.core, 4)
    0.3933
    """
    w, n = Working(), 1 / thread.pitch
    w.given("d", thread.d, "in", meaning=f"outside diameter of {thread.name}")
    w.given("n", n, "tpi", meaning="threads an inch")
    core = w.step("d_c", "d − 1.280654/n", thread.d - 1.280654 / n, "in", answer="core")
    effective = thread.d - 0.640327 / n
    w.step("d_e", "d − 0.640327/n", effective, "in", answer="effective")
    w.step("h", "0.640327/n", 0.640327 / n, "in", meaning="depth on one side", answer="depth")
    w.step("r", "0.137329/n", 0.137329 / n, "in", meaning="crest and root", answer="radius")
    return Worked(WhitworthThread(core, effective), w)
