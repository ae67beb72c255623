from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.fasteners._amounts import above_nothing
from shimstock.trade.sums.fasteners._drills import DrillText
from shimstock.trade.sums.fasteners._lines import pitch_line, thread_lines
from shimstock.trade.sums.fasteners._threads import ThreadText


@a_sum(example="--thread '1/4-20 UNC' --drill 'No. 7'")
def thread_percent(*, thread: ThreadText, drill: DrillText) -> Worked[float]:
    """Per cent of a full thread that a drilled hole leaves for the tap.

    thread: the thread to be tapped, such as 1/4-20 UNC or M10.
    drill: the drill, as No. 7, F, 5/16 or 8.5 mm.
    Raises NotPossible where the drill is as large as the thread.
    Source: Machinery's Handbook, 31st edition, page 2155, (D − drill)·n/1.299; Whitworth form by
    its own depth, 1.280654/n, BS 84.

    >>> from shimstock.trade.sums.fasteners._drills import parse_drill
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = thread_percent(thread=parse_thread("1/4-20"), drill=parse_drill("#7"))
    >>> round(got.value, 1)
    75.4
    """
    w, unit = Working(), thread.unit
    hole = above_nothing("drill", drill.size, unit)
    if hole >= thread.d:
        rule = f"must be smaller than the thread, {thread.d:g} {unit}"
        raise NotPossible(f"drill {drill.name}", rule, "look whether it is the clearance drill")
    thread_lines(w, thread)
    pitch = pitch_line(w, thread)
    w.given("D_1", hole, unit, meaning=f"drill {drill.name}")
    full = thread.form.full
    got = 100 * (thread.d - hole) / (full * pitch)
    w.step("q", f"100·(d − D_1)/({full:.7g}·P)", got, "%", answer="full thread")
    if got > 100:
        w.caution("The hole is smaller than the core of the thread: the tap will jam and break.")
    return Worked(got, w)
