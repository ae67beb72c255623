from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--hole '13/32 in'")
def edge_distance(
    *, hole: Annotated[float, Of("length", above=0)], unit: str = "in"
) -> Worked[float]:
    """Edge, end and pitch of bolt holes by the structural rule, an analogue for a cut gasket.

    No standard gives the edge of a cut gasket; this is the rule for bolted steel, held here as the
    nearest printed one. The old gasket or the face itself goes before it.

    hole: diameter of the hole, in `unit`.
    unit: unit of the lengths, mm or in.
    Source: structural steel table, an analogue: edge 1.5·d_0, end 2·d_0, pitch 3·d_0, from the
    centre of the hole.

    >>> edge_distance(hole=10, unit="mm").value
    15.0
    """
    coherent(unit)
    w = Working()
    w.note("Rule of bolted structural steel, taken as an analogue; it is no rule for gaskets.")
    w.given("d_0", hole, unit, meaning="hole")
    edge = w.step("e_2", "1.5·d_0", 1.5 * hole, unit, meaning="centre to side", answer="edge")
    w.step("e_1", "2·d_0", 2 * hole, unit, meaning="centre to end", answer="end")
    w.step("p", "3·d_0", 3 * hole, unit, meaning="centre to centre", answer="pitch")
    return Worked(edge, w)
