from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Area, Torque, above_nothing
from shimstock.trade.sums.fasteners._films import SCATTER, FilmName, nut_factor
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import (
    area_lines,
    share_of_proof,
    strength_of,
    thread_lines,
)
from shimstock.trade.sums.fasteners._threads import ThreadText


@a_sum(
    example="--thread 3/8-16 --torque '24 lbf.ft' --grade 'SAE J429 5' --film lubricated",
    cautions=(BOLT, SCATTER, OLD_BOLT),
)
def preload_from_torque(
    *,
    thread: ThreadText,
    torque: Torque,
    grade: GradeText | None = None,
    film: FilmName = "plain dry",
    factor: Annotated[float, Of("", above=0, most=1, known=(0.05, 0.4))] | None = None,
    area: Area | None = None,
) -> Worked[float]:
    """Pull that a torque gives a bolt, F = T/(K·d), and its share of the proof load.

    thread: the thread, such as 3/8-16 UNC or M10.
    torque: torque at the spanner, with its unit.
    grade: grade of SAE J429 or class of ISO 898-1, for the share of the proof load.
    film: what lies on the thread and under the head.
    factor: nut factor K, where it is known better than by the film, no unit.
    area: stress area, where a table's own is to be used, with its unit.
    Raises NotPossible where the torque is not above nothing.
    Source: J. E. Shigley, Mechanical Engineering Design, 9th edition, section 8-8, T = K·d·F.

    >>> from shimstock.trade.sums.fasteners._amounts import parse_torque
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = preload_from_torque(thread=parse_thread("3/8-16"), factor=0.15,
    ...     torque=parse_torque("225 lbf.in"))
    >>> round(got.value)
    4000
    """
    w, units = Working(), thread.units
    thread_lines(w, thread)
    turned = above_nothing("torque", torque, units.torque)
    w.given("T", turned, units.torque, meaning="torque")
    k = nut_factor(w, film, factor)
    pull = w.step("F", "T/(K·d)", turned / (k * thread.d), units.force,
                  meaning="pull", answer="preload")  # fmt: skip
    a = area_lines(w, thread, area)
    w.step("σ", "F/A", pull / a, units.pressure, meaning="stress", answer="stress")
    if grade is not None:
        proof = strength_of(w, thread, grade).proof
        w.given("S_p", proof, units.pressure, meaning=f"proof stress of {grade.name}")
        full = w.step("F_p", "S_p·A", proof * a, units.force, meaning="proof load")
        share_of_proof(w, pull, full)
    return Worked(pull, w)
