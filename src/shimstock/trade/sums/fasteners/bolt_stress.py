from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import OLD_BOLT
from shimstock.trade.sums.declare import Of, a_sum

Stiffness = Annotated[float, Of("rate", above=0)]


@dataclass(frozen=True)
class BoltStress:
    """Stress of a tightened bolt before and after a load comes on."""

    initial: float
    final: float


@a_sum(
    example="--preload '25 kN' --external '8 kN' --share 0.3 --area '58 mm2' --proof '580 MPa'",
    cautions=(OLD_BOLT,),
)
def bolt_stress(
    *,
    preload: Annotated[float, Of("force", above=0)],
    external: Annotated[float, Of("force", least=0)],
    area: Annotated[float, Of("area", above=0)],
    share: Annotated[float, Of("", least=0, most=1)] | None = None,
    bolt_rate: Stiffness | None = None,
    parts_rate: Stiffness | None = None,
    proof: Annotated[float, Of("pressure", above=0)] | None = None,
    unit: str = "mm",
) -> Worked[BoltStress]:
    """Stress in a tightened bolt when a load comes on the joint, and the load that parts the joint.

    A tight bolt feels only a share C of the load; the parts let go of the rest. Give C, or both
    rates.

    preload: pull of the tightened bolt, in the force of `unit`.
    external: load on this bolt that would part the joint, in the force of `unit`.
    area: stress area of the bolt, in the area of `unit`.
    share: share C of the load that the bolt feels, no unit.
    bolt_rate: stiffness of the bolt, in the rate of `unit`.
    parts_rate: stiffness of the parts it clamps, in the rate of `unit`.
    proof: proof stress of the bolt, in the pressure of `unit`.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where neither share nor both rates are given, or all three.
    Source: J. E. Shigley, Mechanical Engineering Design, 9th edition, section 8-7; U. C. Jindal,
    Machine Design, example 9-6.

    >>> got = bolt_stress(preload=120e3, external=30e3, share=0.35, area=245, proof=600)
    >>> round(got.value.final, 2)
    532.65
    """
    units, w = coherent(unit), Working()
    w.given("F_i", preload, units.force, meaning="preload")
    w.given("P", external, units.force, meaning="load on the joint")
    w.given("A", area, units.area, meaning="stress area")
    c = _share(w, share, bolt_rate, parts_rate, units.rate)
    initial = w.step("σ_i", "F_i/A", preload / area, units.pressure, answer="initial stress")
    pull = w.step("F_b", "F_i + C·P", preload + c * external, units.force, answer="bolt load")
    final = w.step("σ_b", "F_b/A", pull / area, units.pressure, answer="final stress")
    eased = _eased(w, c, bolt_rate, parts_rate)
    clamp = preload - eased * external
    w.step("F_m", "F_i − C_m·P", clamp, units.force, meaning="still clamps", answer="clamp")
    w.tell("joint", "parts" if clamp <= 0 else "holds")
    if clamp <= 0:
        w.caution("The joint parts: from then on the bolt carries the whole load.")
    if eased > 0:
        w.step("P_0", "F_i/C_m", preload / eased, units.force, answer="parting load")
    _held_to_proof(w, initial, final, proof, units.pressure)
    return Worked(BoltStress(initial, final), w)


def _share(
    w: Working, share: float | None, bolt: float | None, parts: float | None, unit: str
) -> float:
    """Share of the load that the bolt feels, as given or by the stiffness of bolt and parts."""
    if (share is None) != (bolt is not None and parts is not None) or (bolt is None) != (
        parts is None
    ):
        would = "give share, or both bolt-rate and parts-rate"
        raise NotPossible("the share of the load", "is left open or said twice", would)
    if bolt is None or parts is None:
        return w.given("C", share or 0, "", meaning="share that the bolt feels")
    w.given("k_b", bolt, unit, meaning="stiffness of the bolt")
    w.given("k_m", parts, unit, meaning="stiffness of the parts")
    return w.step("C", "k_b/(k_b + k_m)", bolt / (bolt + parts), "", answer="share")


def _eased(w: Working, share: float, bolt: float | None, parts: float | None) -> float:
    """Share of the load by which the parts are let go."""
    if bolt is None or parts is None:
        return w.step("C_m", "1 − C", 1 - share, "", meaning="share that the parts let go")
    return w.step("C_m", "k_m/(k_b + k_m)", parts / (bolt + parts), "",
                  meaning="share that the parts let go")  # fmt: skip


def _held_to_proof(
    w: Working, initial: float, final: float, proof: float | None, unit: str
) -> None:
    if proof is None:
        return
    w.given("S_p", proof, unit, meaning="proof stress")
    w.step("n_i", "σ_i/S_p", initial / proof, "", answer="initial over proof")
    w.step("n_b", "σ_b/S_p", final / proof, "", answer="final over proof")
    if final > proof:
        w.caution("The bolt comes above its proof stress and stretches for good.")
