from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, GOVERNOR, SPRING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.governor._weights import Length, larger

NEARLY = 0.001  # share of the force within which a governor counts as isochronous


@a_sum(
    example="--inner-radius '4 in' --outer-radius '7 in' --inner-force '125 lbf' "
    "--outer-force '250 lbf'",
    cautions=(
        BOOK_FIRST,
        GOVERNOR,
        SPRING,
        "A governor set to hold one speed hunts: keep to the book's droop.",
    ),
)
def isochronous_tension(
    *,
    inner_radius: Length,
    outer_radius: Length,
    inner_force: Annotated[float, Of("N", above=0)],
    outer_force: Annotated[float, Of("N", above=0)],
) -> Worked[float]:
    """Tension to add to a governor's spring for one speed at all loads, and whether it is stable.

    inner_radius: of the balls when in, in mm.
    outer_radius: of the balls when out, in mm.
    inner_force: of the spring towards the spindle when in, in N.
    outer_force: of the spring towards the spindle when out, in N.
    Raises NotPossible where the outer radius is not the larger.
    Source: line of controlling force through the spindle, F = a·r; an Indian institute's laboratory
    sheet on the spring governor.

    >>> round(isochronous_tension(inner_radius=100, outer_radius=175, inner_force=550,
    ...     outer_force=1100).value, 2)
    183.33
    """
    larger("outer radius", outer_radius, "the inner", inner_radius, "mm")
    w = Working()
    w.given("r_1", inner_radius, "mm", meaning="inner radius")
    w.given("r_2", outer_radius, "mm", meaning="outer radius")
    w.given("F_1", inner_force, "N", meaning="inner force")
    w.given("F_2", outer_force, "N", meaning="outer force")
    slope = (outer_force - inner_force) / (outer_radius - inner_radius)
    w.step("a", "(F_2 − F_1)/(r_2 − r_1)", slope, "N/mm", meaning="slope", answer="slope")
    added = slope * inner_radius - inner_force
    w.step("ΔF", "a·r_1 − F_1", added, "N", meaning="to add", answer="tension")
    if abs(added) <= NEARLY * inner_force:
        w.tell("now", "isochronous: one speed at all radii")
    else:
        unstable = "unstable: the balls go from stop to stop"
        w.tell("now", "stable: faster as the balls go out" if added > 0 else unstable)
    return Worked(added, w)
