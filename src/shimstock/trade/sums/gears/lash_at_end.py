from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working


def lash_at_end(
    *, lash: Length, radius: Length, ratio: float, end_radius: Length, unit: str = "in"
) -> Worked[Length]:
    """How far the end of a train moves through the play of one mesh.

    lash: play between the teeth of the mesh, in `unit`.
    radius: pitch radius of the driven gear of that mesh, in `unit`.
    ratio: turns of the end for one turn of that driven gear, no unit; 1 on the same shaft.
    end_radius: where the movement is read, as a fan's tip radius, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where a radius or the ratio is not above 0.
    Source: geometry; the angle j/r is carried through the ratio to the end.

    >>> got = lash_at_end(
    ...     lash=Length(0.030), radius=Length(2), ratio=24 / 18, end_radius=Length(10))
    >>> round(got.value, 3)
    0.2
    """
    _check(radius, ratio, end_radius, unit)
    w = Working(source="geometry: the angle of play carried through the ratio to the end")
    w.given("j", lash, unit, meaning="lash in the mesh")
    w.given("r", radius, unit, meaning="pitch radius of the driven gear")
    w.given("i", ratio, "", meaning="turns of the end for one of that gear")
    w.given("R", end_radius, unit, meaning="radius at which the end is read")
    moved = w.step("s", "j/r·i·R", lash / radius * ratio * end_radius, unit, meaning="seen at end")
    return Worked(Length(moved), w)


def lash_from_end(
    *, movement: Length, radius: Length, ratio: float, end_radius: Length, unit: str = "in"
) -> Worked[Length]:
    """The play in one mesh that a movement at the end of the train means.

    movement: play read at the end that belongs to this mesh alone, in `unit`.
    radius: pitch radius of the driven gear of that mesh, in `unit`.
    ratio: turns of the end for one turn of that driven gear, no unit; 1 on the same shaft.
    end_radius: where the movement was read, as a fan's tip radius, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where a radius or the ratio is not above 0.
    Source: geometry; the angle at the end carried back through the ratio to the mesh.

    >>> got = lash_from_end(
    ...     movement=Length(0.2), radius=Length(2), ratio=24 / 18, end_radius=Length(10))
    >>> round(got.value, 4)
    0.03
    """
    _check(radius, ratio, end_radius, unit)
    w = Working(source="geometry: the angle at the end carried back through the ratio to the mesh")
    w.given("s", movement, unit, meaning="movement at the end through this mesh")
    w.given("r", radius, unit, meaning="pitch radius of the driven gear")
    w.given("i", ratio, "", meaning="turns of the end for one of that gear")
    w.given("R", end_radius, unit, meaning="radius at which the end is read")
    lash = w.step("j", "s/R/i·r", movement / end_radius / ratio * radius, unit, meaning="lash")
    return Worked(Length(lash), w)


def _check(radius: float, ratio: float, end_radius: float, unit: str) -> None:
    if min(radius, ratio, end_radius) <= 0:
        raise ValueError(
            f"radius {radius:g} {unit}, ratio {ratio:g} and end radius {end_radius:g} {unit} "
            "must all be above 0"
        )
