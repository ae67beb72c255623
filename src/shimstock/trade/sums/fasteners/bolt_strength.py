from dataclasses import dataclass

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import OLD_BOLT
from shimstock.trade.sums.declare import a_sum
from shimstock.trade.sums.fasteners._amounts import Area
from shimstock.trade.sums.fasteners._grades import GradeText
from shimstock.trade.sums.fasteners._lines import area_lines, strength_of, thread_lines
from shimstock.trade.sums.fasteners._threads import ThreadText


@dataclass(frozen=True)
class BoltStrength:
    """Loads of a bolt, in lbf for inch threads and N for metric ones."""

    proof_load: float
    yield_load: float
    tensile_load: float


@a_sum(example="--thread '3/4-10 UNC' --grade 'SAE J429 grade 2'", cautions=(OLD_BOLT,))
def bolt_strength(
    *, thread: ThreadText, grade: GradeText, area: Area | None = None
) -> Worked[BoltStrength]:
    """Proof, yield and tensile load of a bolt by its thread and grade.

    Mind the step of grade 2: above 3/4 in it bears so much less that a 7/8 in bolt has a lower
    proof load than a 3/4 in one. The tables of the standards print loads rounded.

    thread: the thread, such as 3/4-10 UNC or M16.
    grade: grade of SAE J429 or class of ISO 898-1.
    area: stress area, where a table's own is to be used, with its unit.
    Raises NotPossible where an area is not above nothing.
    Source: SAE J429, table 1; ISO 898-1, table 3, classes 4.6, 4.8, 5.8 and 9.8 from memory.

    >>> from shimstock.trade.sums.fasteners._grades import parse_grade
    >>> from shimstock.trade.sums.fasteners._threads import parse_thread
    >>> got = bolt_strength(thread=parse_thread("3/4-10"), grade=parse_grade("grade 5"))
    >>> round(got.value.proof_load), round(got.value.tensile_load)
    (28429, 40135)
    """
    w, units = Working(), thread.units
    thread_lines(w, thread)
    a = area_lines(w, thread, area)
    of = strength_of(w, thread, grade)
    w.given("S_p", of.proof, units.pressure, meaning="proof stress")
    w.given("S_y", of.yields, units.pressure, meaning="yield stress")
    w.given("S_u", of.tensile, units.pressure, meaning="tensile stress")
    found = BoltStrength(
        w.step("F_p", "S_p·A", of.proof * a, units.force,
               meaning="bears it without lasting stretch", answer="proof load"),
        w.step("F_y", "S_y·A", of.yields * a, units.force, answer="yield load"),
        w.step("F_u", "S_u·A", of.tensile * a, units.force, meaning="parts", answer="tensile load"),
    )  # fmt: skip
    return Worked(found, w)
