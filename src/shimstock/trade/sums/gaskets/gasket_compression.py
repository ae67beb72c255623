from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import OLD_GASKET
from shimstock.trade.sums.declare import Of, a_sum

SOFT = 1.0  # mm of compression; more is soft
FLAT_SOFT, FLAT_HARD = 0.25, 0.15  # mm


@a_sum(
    example="--thickness '1/32 in' --after '0.027 in' --flatness '0.004 in'",
    cautions=(OLD_GASKET,),
)
def gasket_compression(
    *,
    thickness: Annotated[float, Of("mm", above=0, found="gasket thickness")],
    after: Annotated[float, Of("mm", above=0)] | None = None,
    stress: Annotated[float, Of("MPa", least=0)] | None = None,
    modulus: Annotated[float, Of("MPa", above=0)] | None = None,
    flatness: Annotated[float, Of("mm", least=0)] | None = None,
) -> Worked[float]:
    """How much a gasket is squeezed, whether that is soft or hard, and how flat its faces must be.

    Give the thickness after, as measured on a gasket taken off, or stress and modulus.

    thickness: thickness before it is squeezed, in mm.
    after: thickness when squeezed, in mm.
    stress: pressure of the bolts on the gasket, in MPa.
    modulus: modulus of the gasket in squeezing, in MPa.
    flatness: out-of-flat of the worse face, as measured, in mm.
    Raises NotPossible where neither or both ways are given, or the gasket would not get thinner.
    Source: ASME PCC-1, appendix D: soft is more than 1.0 mm of compression; its flatness of 0.25 mm
    for soft and 0.15 mm for hard gaskets from memory, for wide flange faces.

    >>> gasket_compression(thickness=0.8, after=0.7).working.answers["kind"].value
    'hard'
    """
    w = Working()
    w.given("t", thickness, "mm", meaning="thickness before")
    squeezed = _squeezed(w, thickness, after, stress, modulus)
    share = squeezed / thickness
    w.step("q", "100·c/t", 100 * share, "%", meaning="of its thickness", answer="share")
    soft = squeezed > SOFT
    w.tell("kind", "soft" if soft else "hard")
    limit = FLAT_SOFT if soft else FLAT_HARD
    w.step("f_m", f"{limit:g}", limit, "mm", meaning="out-of-flat at most", answer="flatness")
    if flatness is not None:
        w.given("f", flatness, "mm", meaning="out-of-flat measured")
        w.tell("flat enough", "yes" if flatness <= limit else "no")
    return Worked(squeezed, w)


def _squeezed(
    w: Working, thickness: float, after: float | None, stress: float | None, modulus: float | None
) -> float:
    """How much thinner it gets, in mm."""
    if after is not None and stress is None and modulus is None:
        return _by_thickness(w, thickness, after)
    if after is None and stress is not None and modulus is not None:
        return _by_stress(w, thickness, stress, modulus)
    raise NotPossible("after, or stress and modulus", "must be one of the two", "give one way")


def _by_thickness(w: Working, thickness: float, after: float) -> float:
    if after > thickness:
        rule = f"must not be above the thickness before, {thickness:g} mm"
        raise NotPossible(f"after {after:g} mm", rule, "look whether the two are swapped")
    w.given("t_a", after, "mm", meaning="thickness after")
    return w.step("c", "t − t_a", thickness - after, "mm", answer="compression")


def _by_stress(w: Working, thickness: float, stress: float, modulus: float) -> float:
    if stress >= modulus:
        rule = f"must be below the modulus, {modulus:g} MPa: nothing would be left of the gasket"
        raise NotPossible(f"stress {stress:g} MPa", rule, "look whether the two are swapped")
    w.given("σ", stress, "MPa", meaning="pressure on the gasket")
    w.given("E", modulus, "MPa", meaning="modulus of the gasket")
    return w.step("c", "t·σ/E", thickness * stress / modulus, "mm", answer="compression")
