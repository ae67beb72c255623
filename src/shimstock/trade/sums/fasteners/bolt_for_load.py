from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fasteners._amounts import Force, above_nothing
from shimstock.trade.sums.fasteners._areas import stress_area_of
from shimstock.trade.sums.fasteners._grades import Grade, GradeText
from shimstock.trade.sums.fasteners._lines import area_lines, strength_of, thread_lines
from shimstock.trade.sums.fasteners._series import Row, rows
from shimstock.trade.sums.fasteners._threads import Thread


@a_sum(example="--load '4000 lbf' --grade 'SAE J429 5'")
def bolt_for_load(
    *,
    load: Force,
    grade: GradeText,
    share: Annotated[float, Of("", above=0, most=1)] = 0.75,
    series: Literal["UNC", "UNF", "ISO coarse", "ISO fine"] = "UNC",
) -> Worked[float]:
    """Smallest bolt of a series that bears a clamping load at a share of its proof load.

    load: pull that one bolt is to give, with its unit.
    grade: grade of SAE J429 or class of ISO 898-1.
    share: share of the proof load to pull to, no unit.
    series: series of threads to choose from.
    Raises NotPossible where no bolt of the series is big enough.
    Source: R. L. Mott, Machine Elements in Mechanical Design, example 19-1: A = F/(share·proof).

    >>> from shimstock.trade.sums.fasteners._amounts import parse_force
    >>> from shimstock.trade.sums.fasteners._grades import parse_grade
    >>> got = bolt_for_load(load=parse_force("4000 lbf"), grade=parse_grade("SAE J429 5"))
    >>> got.working.answers["thread"].value
    '3/8-16 UNC'
    """
    of_series = sorted((r for r in rows() if r.series == series), key=lambda r: (r.d, -r.pitch))
    force = "lbf" if of_series[0].unit == "in" else "N"
    pull = above_nothing("load", load, force)
    row = next((r for r in of_series if _bears(r, grade, share) >= pull), None)
    if row is None:
        what = f"{pull:.4g} {force} of {grade.name}"
        would = "share the load among more bolts, or take a better grade"
        raise NotPossible(what, f"is more than any {series} bolt of the tables bears", would)
    w, thread = Working(), Thread(row.name, row.d, row.pitch, row.unit, row.form, row.n)
    w.given("F", pull, force, meaning="load")
    w.given("s", share, "", meaning="share of the proof load")
    proof = strength_of(w, thread, grade).proof
    w.given("S_p", proof, thread.units.pressure, meaning="proof stress")
    needed = w.step("A_min", "F/(s·S_p)", pull / (share * proof), thread.units.area,
                    meaning="stress area needed", answer="least area")  # fmt: skip
    thread_lines(w, thread)
    area = area_lines(w, thread, None, answer="area")
    w.step("F_max", "s·S_p·A", share * proof * area, force, answer="bears")
    w.tell("thread", thread.name)
    return Worked(needed, w)


def _bears(row: Row, grade: Grade, share: float) -> float:
    """Load at the share of the proof load; nothing where the standard leaves the size out."""
    strength = grade.at(row.d, row.unit)
    area = stress_area_of(row.d, row.pitch, row.form.stress)
    return 0.0 if strength.beyond else share * strength.proof * area
