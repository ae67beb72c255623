"""How much a hub and a shaft give under the pressure between them: Lamé's thick rings."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

from shimstock.trade.numbers.coherent import Coherent
from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working

Stuff = Literal["steel", "grey iron", "ductile iron", "brass", "bronze", "aluminium"]
NEAR = 75.0  # per cent of what a hub bears up to which a fit is called easy on it
THINNEST = 1e-4  # of the diameter: less wall than this is none


class Stiffness(NamedTuple):
    """Modulus in GPa, Poisson's ratio, and the pull in MPa that it usually bears unhurt."""

    modulus: float
    poisson: float
    bears: float


# Shigley, Mechanical Engineering Design, table A-5; ductile iron Callister, appendix B (from
# memory). What each bears, at its yield or its crack, is common practice, no source: the make of
# steel or iron decides.
STUFFS: dict[str, Stiffness] = {
    "steel": Stiffness(207, 0.292, 250),
    "grey iron": Stiffness(100, 0.211, 140),
    "ductile iron": Stiffness(169, 0.29, 270),
    "brass": Stiffness(106, 0.324, 100),
    "bronze": Stiffness(111, 0.349, 140),
    "aluminium": Stiffness(71, 0.334, 150),
}


@dataclass(frozen=True)
class Member:
    """Hub or shaft: what it is of, and modulus and Poisson's ratio where they are typed."""

    material: str
    modulus: float | None
    poisson: float | None


@dataclass(frozen=True)
class Joint:
    """Diameters of a pressed joint, 0 for a solid shaft, and its two parts."""

    diameter: float
    hub: float
    bore: float
    hub_of: Member
    shaft_of: Member


def joint_lines(w: Working, joint: Joint, units: Coherent) -> float:
    """The interference that one unit of pressure takes up, C; k_o and k_i stand in the working.

    Raises NotPossible where the diameters do not lie inside one another.
    """
    d, d_o, d_i, unit = joint.diameter, joint.hub, joint.bore, units.length
    _nested(joint, unit)
    w.given("d", d, unit, meaning="diameter where they meet")
    w.given("d_o", d_o, unit, meaning="outside of the hub")
    w.given("d_i", d_i, unit, meaning="bore of the shaft, 0 where it is solid")
    e_o, nu_o = _member(w, "o", "hub", joint.hub_of, units)
    e_i, nu_i = _member(w, "i", "shaft", joint.shaft_of, units)
    k_o = w.step("k_o", "(d_o² + d²)/(d_o² − d²)", (d_o**2 + d**2) / (d_o**2 - d**2), "")
    k_i = w.step("k_i", "(d² + d_i²)/(d² − d_i²)", (d**2 + d_i**2) / (d**2 - d_i**2), "")
    gives = d * ((k_o + nu_o) / e_o + (k_i - nu_i) / e_i)
    return w.step("C", "d·((k_o + ν_o)/E_o + (k_i − ν_i)/E_i)", gives, f"{unit}/{units.pressure}",
                  meaning="interference that one unit of pressure takes up")  # fmt: skip


def hoop_lines(w: Working, joint: Joint, p: float, units: Coherent) -> None:
    """Hoop stress where hub and shaft meet, and at the bore of a hollow shaft."""
    w.step("σ_o", "p·k_o", p * w.value("k_o"), units.pressure,
           meaning="hub at its bore, pulled", answer="hub hoop")  # fmt: skip
    w.step("σ_i", "−p·k_i", -p * w.value("k_i"), units.pressure,
           meaning="shaft at its outside, below 0 pressed", answer="shaft hoop")  # fmt: skip
    if joint.bore > 0:
        d, d_i = joint.diameter, joint.bore
        w.step("σ_b", "−2·p·d²/(d² − d_i²)", -2 * p * d**2 / (d**2 - d_i**2), units.pressure,
               meaning="shaft at its bore, pressed hardest", answer="shaft bore hoop")  # fmt: skip
    w.note("The sum holds while every hoop stress stays below what the metal yields or cracks at.")
    _too_tight(w, joint.hub_of.material, p * w.value("k_o"), units)


def _too_tight(w: Working, material: str, hoop: float, units: Coherent) -> None:
    """Whether the hub is pulled harder than its metal usually bears."""
    bears = convert(STUFFS[material].bears, "MPa", units.pressure)
    w.given("σ_u", float(f"{bears:.3g}"), units.pressure, meaning=f"{material} usually bears")
    share = 100 * hoop / w.value("σ_u")
    w.step("u", "100·σ_o/σ_u", share, "%", meaning="of it", answer="hub strained")
    words = "no" if share <= NEAR else "near it: take less" if share <= 100 else "yes"
    w.tell("too tight", f"{words} (for usual {material}; common practice, no source)")


def _nested(joint: Joint, unit: str) -> None:
    if joint.hub <= joint.diameter * (1 + THINNEST):
        rule = f"must be larger than where they meet, {joint.diameter:g} {unit}"
        raise NotPossible(f"hub {joint.hub:g} {unit}", rule, "look whether the two are swapped")
    if joint.bore >= joint.diameter * (1 - THINNEST):
        rule = f"must be smaller than where they meet, {joint.diameter:g} {unit}"
        raise NotPossible(f"bore {joint.bore:g} {unit}", rule, "type 0 for a solid shaft")


def _member(
    w: Working, mark: str, what: str, member: Member, units: Coherent
) -> tuple[float, float]:
    """Modulus and Poisson's ratio of one part: as typed, else of its material."""
    of = STUFFS[member.material]
    known = float(f"{convert(of.modulus, 'GPa', units.pressure):.4g}")
    typed = member.modulus is not None
    said = f"{what}, as typed" if typed else f"{what}, {member.material}"
    e = w.given(f"E_{mark}", member.modulus or known, units.pressure, meaning=said)
    nu = of.poisson if member.poisson is None else member.poisson
    return e, w.given(f"ν_{mark}", nu, "", meaning=f"Poisson's ratio of the {what}")
