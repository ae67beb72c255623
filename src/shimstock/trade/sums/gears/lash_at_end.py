from typing import Annotated

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--lash '0.030 in' --radius '2 in' --ratio 1.3333 --end-radius '10 in'")
def lash_at_end(
    *,
    lash: Annotated[Length, Of("length")],
    radius: Annotated[Length, Of("length", above=0, found="radius")],
    ratio: Annotated[float, Of("", above=0, found="end ratio")],
    end_radius: Annotated[Length, Of("length", above=0, found="end radius")],
    unit: str = "in",
) -> Worked[Length]:
    """How far the end of a train moves through the play of one mesh.

    lash: play between the teeth of the mesh, in `unit`.
    radius: pitch radius of the driven gear of that mesh, in `unit`.
    ratio: turns of the end for one turn of that driven gear, no unit; 1 on the same shaft.
    end_radius: where the movement is read, as a fan's tip radius, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: geometry; the angle j/r is carried through the ratio to the end.

    >>> got = lash_at_end(
    ...     lash=Length(0.030), radius=Length(2), ratio=24 / 18, end_radius=Length(10))
    >>> round(got.value, 3)
    0.2
    """
    w = Working()
    w.given("j", lash, unit, meaning="lash in the mesh")
    w.given("r", radius, unit, meaning="pitch radius of the driven gear")
    w.given("i", ratio, "", meaning="turns of the end for one of that gear")
    w.given("R", end_radius, unit, meaning="radius at which the end is read")
    moved = lash / radius * ratio * end_radius
    w.step("s", "j/r·i·R", moved, unit, meaning="seen at the end", answer="movement")
    return Worked(Length(moved), w)
