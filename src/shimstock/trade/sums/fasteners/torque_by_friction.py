from math import cos, pi, radians
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Area, Force, Length, Stress, above_nothing
from shimstock.trade.sums.fasteners._films import SCATTER
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import Pull, pitch_line, thread_lines
from shimstock.trade.sums.fasteners._threads import Thread, ThreadText


@a_sum(
    example="--thread '3/4-16 UNF' --grade 'SAE J429 5' --thread-friction 0.15 "
    "--collar-friction 0.15",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def torque_by_friction(
    *,
    thread: ThreadText,
    thread_friction: Annotated[float, Of("", least=0, most=1, known=(0.04, 0.35))],
    collar_friction: Annotated[float, Of("", least=0, most=1, known=(0.04, 0.35))],
    grade: GradeText | None = None,
    share: Annotated[float, Of("", above=0, most=1, known=(0.3, 0.9))] = 0.75,
    area: Area | None = None,
    proof: Stress | None = None,
    preload: Force | None = None,
    collar: Length | None = None,
) -> Worked[float]:
    """Torque by the screw formula, from the friction of the thread and that under the head.

    thread: the thread, such as 3/4-16 UNF or M18.
    thread_friction: friction between the flanks, no unit.
    collar_friction: friction under the head or nut that is turned, no unit.
    grade: grade of SAE J429 or class of ISO 898-1.
    share: share of the proof load to pull to, no unit.
    area: stress area, where a table's own is to be used, with its unit.
    proof: proof stress, where no grade is known, with its unit.
    preload: pull that is wanted, with its unit.
    collar: mean diameter of the face that turns, with its unit; 1.25·d where nothing is typed.
    Raises NotPossible where neither grade, proof nor preload is given.
    Source: J. E. Shigley, Mechanical Engineering Design, 9th edition, section 8-8, equations 8-22
    to 8-26.

    >>> from shimstock.trade.sums.fasteners._amounts import parse_force
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = torque_by_friction(thread=parse_thread("3/4-16 UNF"), thread_friction=0.15,
    ...     collar_friction=0.15, preload=parse_force("25000 lbf"))
    >>> round(got.value)
    3551
    """
    w, units = Working(), thread.units
    thread_lines(w, thread)
    pull = Pull(thread, grade, share, area, proof, preload).lines(w)
    in_thread = _in_thread(w, thread, thread_friction, pull)
    w.given("f_c", collar_friction, "", meaning="friction under the head")
    across = _collar(w, thread, collar)
    under = w.step("T_c", "F·f_c·d_c/2", pull * collar_friction * across / 2, units.torque,
                   meaning="under the head", answer="under the head")  # fmt: skip
    got = w.step("T", "T_t + T_c", in_thread + under, units.torque, answer="torque")
    w.step("K", "T/(F·d)", got / (pull * thread.d), "",
           meaning="what T = K·d·F would need", answer="nut factor")  # fmt: skip
    return Worked(got, w)


def _in_thread(w: Working, thread: Thread, friction: float, pull: float) -> float:
    """Torque that the thread takes: what lifts and what rubs."""
    pitch = pitch_line(w, thread)
    deep, half = thread.form.core, thread.form.angle / 2
    core = thread.d - deep * pitch
    mean = (thread.d + core) / 2
    w.step("d_r", f"d − {deep:.7g}·P", core, thread.unit, meaning="minor diameter")
    w.step("d_m", "(d + d_r)/2", mean, thread.unit, meaning="mean diameter")
    lead = w.step("l", "P/(π·d_m)", pitch / (pi * mean), "", meaning="tangent of the lead")
    w.given("α", half, "deg", meaning=f"half of the {thread.form.angle:g}° angle")
    w.given("f", friction, "", meaning="friction in the thread")
    wedged = w.step("f'", "f/cos(α)", friction / cos(radians(half)), "")
    return w.step("T_t", "F·d_m/2·(l + f')/(1 − l·f')",
                  pull * mean / 2 * (lead + wedged) / (1 - lead * wedged), thread.units.torque,
                  meaning="in the thread", answer="in the thread")  # fmt: skip


def _collar(w: Working, thread: Thread, collar: Length | None) -> float:
    if collar is None:
        return w.step("d_c", "1.25·d", 1.25 * thread.d, thread.unit,
                      meaning="mean diameter of a hexagon's face")  # fmt: skip
    across = above_nothing("collar", collar, thread.unit)
    return w.given("d_c", across, thread.unit, meaning="mean diameter of the face")
