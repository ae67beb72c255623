from typing import Annotated

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--movement '0.2 in' --radius '2 in' --ratio 1.3333 --end-radius '10 in'")
def lash_from_end(
    *,
    movement: Annotated[Length, Of("length")],
    radius: Annotated[Length, Of("length", above=0, found="radius")],
    ratio: Annotated[float, Of("", above=0, found="end ratio")],
    end_radius: Annotated[Length, Of("length", above=0, found="end radius")],
    unit: str = "in",
) -> Worked[Length]:
    """The play in one mesh that a movement at the end of the train means.

    movement: play read at the end that belongs to this mesh alone, in `unit`.
    radius: pitch radius of the driven gear of that mesh, in `unit`.
    ratio: turns of the end for one turn of that driven gear, no unit; 1 on the same shaft.
    end_radius: where the movement was read, as a fan's tip radius, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: geometry; the angle at the end carried back through the ratio to the mesh.

    >>> got = lash_from_end(
    ...     movement=Length(0.2), radius=Length(2), ratio=24 / 18, end_radius=Length(10))
    >>> round(got.value, 4)
    0.03
    """
    w = Working()
    w.given("s", movement, unit, meaning="movement at the end through this mesh")
    w.given("r", radius, unit, meaning="pitch radius of the driven gear")
    w.given("i", ratio, "", meaning="turns of the end for one of that gear")
    w.given("R", end_radius, unit, meaning="radius at which the end is read")
    lash = movement / end_radius / ratio * radius
    w.step("j", "s/R/i·r", lash, unit, meaning="lash in the mesh", answer="lash")
    return Worked(Length(lash), w)
