from typing import Annotated, Literal

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._drills import nearest
from shimstock.trade.sums.fasteners._forms import ISO, UNIFIED
from shimstock.trade.sums.fasteners._lines import pitch_line, thread_lines
from shimstock.trade.sums.fasteners._threads import Thread, ThreadText

UNIFIED_USUAL, OLDER_USUAL = 75.0, 80.0  # per cent of a full thread


@a_sum(example="--thread '3/8-16 UNC'")
def tap_drill(
    *,
    thread: ThreadText,
    percent: Annotated[float, Of("%", above=0, most=100, known=(50, 85))] | None = None,
    drills: Literal["inch", "metric"] | None = None,
) -> Worked[float]:
    """Hole to drill before a tap, and the nearest drill.

    Where no per cent is typed, ISO metric threads get d − P, about 77 %, unified ones 75 %, and
    Whitworth, BA and cycle threads 80 % of their own depth.

    thread: the thread to be tapped, such as 3/8-16 UNC, M10 or 1/2 BSW.
    percent: per cent of a full thread that is wanted, in %.
    drills: which drills are at hand; those of the thread's own unit where nothing is said.
    Raises NotPossible where no drill is near.
    Source: Machinery's Handbook, 31st edition, page 2155, D − percent·1.299/n; ISO 2306, d − P;
    Whitworth form by its own depth, 1.280654/n, BS 84, and BS 1157, whose drills leave 77 to 87 %.

    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> tap_drill(thread=parse_thread("3/8-16 UNC")).working.answers["drill"].value
    '5/16'
    """
    w = Working()
    thread_lines(w, thread)
    hole = _hole(w, thread, percent)
    unit = {"inch": "in", "metric": "mm", None: thread.unit}[drills]
    drill = nearest(convert(hole, thread.unit, unit), unit)
    size = convert(drill.size.value, drill.size.unit, thread.unit)
    if not 0 < size < thread.d:
        raise NotPossible(f"{thread.name}", "has no drill near its hole", "take the other drills")
    w.tell("drill", drill.name)
    w.given("D_1", size, thread.unit, meaning=f"drill {drill.name}, the nearest")
    full, pitch = thread.form.full, thread.pitch
    w.step("q_1", f"100·(d − D_1)/({full:.7g}·P)", 100 * (thread.d - size) / (full * pitch), "%",
           meaning="of a full thread with this drill", answer="full thread")  # fmt: skip
    return Worked(hole, w)


def _hole(w: Working, thread: Thread, percent: float | None) -> float:
    """The hole by the per cent that is wanted, or by the rule of the form."""
    pitch = pitch_line(w, thread)
    if percent is None and thread.form is ISO:
        return w.step("D_h", "d − P", thread.d - pitch, "mm", meaning="hole", answer="hole")
    usual = UNIFIED_USUAL if thread.form is UNIFIED else OLDER_USUAL
    wanted = usual if percent is None else percent
    full = thread.form.full
    w.given("q", wanted, "%", meaning="of a full thread")
    hole = thread.d - wanted / 100 * full * pitch
    shown = f"d − q/100·{full:.7g}·P"
    return w.step("D_h", shown, hole, thread.unit, meaning="hole", answer="hole")
