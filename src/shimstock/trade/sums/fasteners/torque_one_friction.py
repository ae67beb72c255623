from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Area, Force, Stress
from shimstock.trade.sums.fasteners._films import SCATTER
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import Pull, pitch_line, thread_lines
from shimstock.trade.sums.fasteners._threads import ThreadText


@a_sum(
    example="--thread 1/2-13 --grade 'SAE J429 8' --friction 0.15",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def torque_one_friction(
    *,
    thread: ThreadText,
    friction: Annotated[float, Of("", least=0, most=1, known=(0.04, 0.35))],
    grade: GradeText | None = None,
    share: Annotated[float, Of("", above=0, most=1, known=(0.3, 0.9))] = 0.75,
    area: Area | None = None,
    proof: Stress | None = None,
    preload: Force | None = None,
) -> Worked[float]:
    """Torque by the short form for one friction in thread and under head alike.

    thread: the thread, such as 1/2-13 UNC.
    friction: friction in the thread and under the head, no unit.
    grade: grade of SAE J429 or class of ISO 898-1.
    share: share of the proof load to pull to, no unit.
    area: stress area, where a table's own is to be used, with its unit.
    proof: stress that the share is of, where no grade is known, with its unit.
    preload: pull that is wanted, with its unit.
    Raises NotPossible where neither grade, proof nor preload is given.
    Source: Machinery's Handbook, 31st edition, page 1665, T = F·(0.159/n + 1.156·μ·d).

    >>> from shimstock.trade.sums.fasteners._amounts import parse_stress
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = torque_one_friction(thread=parse_thread("1/2-13"), friction=0.15, share=0.55,
    ...     proof=parse_stress("150 ksi"))
    >>> round(got.value)
    1158
    """
    w = Working()
    thread_lines(w, thread)
    pull = Pull(thread, grade, share, area, proof, preload).lines(w)
    pitch = pitch_line(w, thread)
    w.given("μ", friction, "", meaning="friction")
    got = pull * (0.159 * pitch + 1.156 * friction * thread.d)
    w.step("T", "F·(0.159·P + 1.156·μ·d)", got, thread.units.torque, answer="torque")
    return Worked(got, w)
