from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--force '1200 lbf' --rivets 10 --shear '4000 psi' --crushing '8000 psi' "
    "--thickness '1/8 in'",
    cautions=(BRAKES, LINING_DUST),
)
def brake_rivets(
    *,
    force: Annotated[float, Of("force", above=0)],
    rivets: Annotated[int, Of("", least=1)],
    shear: Annotated[float, Of("pressure", above=0)],
    crushing: Annotated[float, Of("pressure", above=0)],
    thickness: Annotated[float, Of("length", above=0)],
    hole: Annotated[float, Of("length", above=0)] | None = None,
    across: Annotated[int, Of("", least=1)] = 2,
    tension: Annotated[float, Of("pressure", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Least rivet diameter for a force on a riveted band or shoe, and the width of steel left.

    The drag of a lining on its rivets is the torque of the shoe over the radius of the drum.

    force: force that the rivets carry together, in the force of `unit`.
    rivets: rivets that share it, a count.
    shear: shear stress that the rivets may have, in the pressure of `unit`.
    crushing: pressure that rivet and plate may have on each other, in the pressure of `unit`.
    thickness: thickness of the thinner plate, in `unit`.
    hole: rivet hole as drilled, where the plate's width is asked, in `unit`.
    across: rivets that stand side by side across the plate, a count.
    tension: tensile stress that the plate may have, in the pressure of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where one of hole and tension is missing.
    Source: V. B. Bhandari, Design of Machine Elements, example 8.18: single shear, crushing, and
    tension beside the holes.

    >>> round(brake_rivets(force=10000, rivets=4, shear=60, crushing=120, thickness=3).value, 2)
    7.28
    """
    goes_with("hole", hole, "tension", tension)
    goes_with("tension", tension, "hole", hole)
    units, w = coherent(unit), Working()
    w.given("P", force, units.force, meaning="force on all rivets")
    w.given("n", rivets, "", meaning="rivets")
    w.given("τ", shear, units.pressure, meaning="shear stress allowed")
    w.given("σ_c", crushing, units.pressure, meaning="crushing pressure allowed")
    w.given("t", thickness, unit, meaning="thickness of the plate")
    each = w.step("P_1", "P/n", force / rivets, units.force, meaning="on one rivet")
    by_shear = w.step("d_s", "√(4·P_1/(π·τ))", sqrt(4 * each / (pi * shear)), unit)
    by_crushing = w.step("d_c", "P_1/(t·σ_c)", each / (thickness * crushing), unit)
    least = w.step("d", "max(d_s, d_c)", max(by_shear, by_crushing), unit, answer="diameter")
    w.note("Take the next larger rivet that there is; soft brass or copper, never steel.")
    if hole is not None and tension is not None:
        _width(w, force, thickness, hole, across, tension, unit)
    return Worked(least, w)


def _width(
    w: Working, force: float, thickness: float, hole: float, across: int, tension: float, unit: str
) -> None:
    """The width of plate that carries the force beside its holes, and the edge of common use."""
    w.given("d_h", hole, unit, meaning="rivet hole")
    w.given("n_a", across, "", meaning="rivets side by side")
    w.given("σ_t", tension, coherent(unit).pressure, meaning="tensile stress allowed")
    width = force / (thickness * tension) + across * hole
    w.step("w", "P/(t·σ_t) + n_a·d_h", width, unit, meaning="least width", answer="width")
    w.step("e", "1.5·d_h", 1.5 * hole, unit, meaning="hole to edge", answer="edge")
