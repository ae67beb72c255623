from dataclasses import dataclass
from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Length, Stress, above_nothing
from shimstock.trade.sums.fasteners._films import SCATTER
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._heads import head_lines
from shimstock.trade.sums.fasteners._lines import pitch_line, strength_of, thread_lines
from shimstock.trade.sums.fasteners._threads import Thread, ThreadText

Friction = Annotated[float, Of("", least=0, most=1, known=(0.04, 0.35))]


@dataclass(frozen=True)
class Assembly:
    """Pull and torque at which the shank, pulled and twisted, comes to the share of its yield."""

    preload: float
    torque: float


@a_sum(
    example="--thread M12x1.25 --grade 'ISO 898-1 8.8' --thread-friction 0.12 --head-friction 0.12",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def assembly_torque(
    *,
    thread: ThreadText,
    grade: GradeText,
    thread_friction: Friction = 0.12,
    head_friction: Friction = 0.12,
    share: Annotated[float, Of("", above=0, most=1)] = 0.9,
    yields: Stress | None = None,
    face: Length | None = None,
    hole: Length | None = None,
) -> Worked[Assembly]:
    """Assembly pull and torque to a share of the yield, by thread and head friction.

    The shank is pulled and twisted at once; both count against its yield. The torque is parted as
    ISO 16047 measures it: pitch, thread and head.

    thread: the thread, such as M12×1.25.
    grade: class of ISO 898-1 or grade of SAE J429.
    thread_friction: friction in the thread, no unit.
    head_friction: friction under the head or nut that is turned, no unit.
    share: share of the yield that pull and twist together may come to, no unit.
    yields: yield stress, where it is known better than by the grade, with its unit.
    face: outside of the face under the head, with its unit; hexagon heads M8 to M24 by table.
    hole: hole under the head, with its unit.
    Raises NotPossible where the head stands in no table, or hole and face are swapped.
    Source: VDI 2230 part 1, assembly preload and tightening torque; ISO 16047; ISO 4014 and
    ISO 273 for head and hole.

    >>> from shimstock.trade.sums.fasteners._grades import parse_grade
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = assembly_torque(thread=parse_thread("M10x1.25"), grade=parse_grade("8.8"))
    >>> round(got.value.torque / 1000, 1)
    50.9
    """
    w, units = Working(), thread.units
    thread_lines(w, thread)
    pitch = pitch_line(w, thread)
    strength = strength_of(w, thread, grade)
    limit = strength.yields if yields is None else above_nothing("yields", yields, units.pressure)
    w.given("R", limit, units.pressure, meaning="yield stress")
    w.given("ν", share, "", meaning="share of the yield")
    w.given("μ_G", thread_friction, "", meaning="friction in the thread")
    w.given("μ_K", head_friction, "", meaning="friction under the head")
    d_2, pull = _pull(w, thread, thread_friction, share * limit)
    d_km = head_lines(w, thread, face, hole)
    got = pull * (0.16 * pitch + 0.58 * d_2 * thread_friction + d_km * head_friction / 2)
    w.step("M_A", "F_M·(0.16·P + 0.58·d_2·μ_G + D_Km·μ_K/2)", got, units.torque,
           meaning="tightening torque", answer="torque")  # fmt: skip
    return Worked(Assembly(pull, got), w)


def _pull(w: Working, thread: Thread, friction: float, allowed: float) -> tuple[float, float]:
    """Effective diameter, and pull at which pull and twist together come to what is allowed."""
    d, p, unit = thread.d, thread.pitch, thread.unit
    d_2 = w.step("d_2", "d − 0.6495·P", d - 0.6495 * p, unit, meaning="effective diameter")
    d_3 = w.step("d_3", "d − 1.2269·P", d - 1.2269 * p, unit, meaning="core diameter")
    d_0 = w.step("d_0", "(d_2 + d_3)/2", (d_2 + d_3) / 2, unit)
    a_0 = w.step("A_0", "π/4·d_0²", pi / 4 * d_0**2, thread.units.area)
    twist = 1.5 * d_2 / d_0 * (p / (pi * d_2) + 1.155 * friction)
    w.step("t", "1.5·d_2/d_0·(P/(π·d_2) + 1.155·μ_G)", twist, "", meaning="twist over pull")
    pull = allowed * a_0 / sqrt(1 + 3 * twist**2)
    w.step("F_M", "ν·R·A_0/√(1 + 3·t²)", pull, thread.units.force,
           meaning="assembly preload", answer="preload")  # fmt: skip
    return d_2, pull
