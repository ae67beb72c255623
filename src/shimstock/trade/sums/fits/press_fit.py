from math import pi
from typing import Annotated, Literal

from shimstock.trade.numbers.coherent import Coherent, coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PRESS
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._lame import Joint, Member, Stuff, hoop_lines, joint_lines

MOST_SHARE = 0.01  # of the diameter; press fits lie near 0.001 of it


@a_sum(
    example="--interference '0.04 mm' --diameter '50 mm' --hub '80 mm' --length '40 mm'",
    cautions=(PRESS,),
)
def press_fit(
    *,
    interference: Annotated[float, Of("length", above=0)],
    diameter: Annotated[float, Of("length", above=0)],
    hub: Annotated[float, Of("length", above=0)],
    bore: Annotated[float, Of("length", least=0)] = 0,
    length: Annotated[float, Of("length", above=0)] | None = None,
    friction: Annotated[float, Of("", above=0, most=1, known=(0.05, 0.3))] = 0.12,
    on: Literal["diameter", "radius"] = "diameter",
    hub_material: Stuff = "steel",
    shaft_material: Stuff = "steel",
    hub_modulus: Annotated[float, Of("pressure", above=0)] | None = None,
    hub_poisson: Annotated[float, Of("", least=0, below=0.5)] | None = None,
    shaft_modulus: Annotated[float, Of("pressure", above=0)] | None = None,
    shaft_poisson: Annotated[float, Of("", least=0, below=0.5)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Pressure of a press or shrink fit, the stress in both parts, and what it holds.

    interference: how much the shaft is larger than the hub's bore, in `unit`.
    diameter: where hub and shaft meet, in `unit`.
    hub: outside diameter of the hub, in `unit`.
    bore: bore of a hollow shaft, 0 for a solid one, in `unit`.
    length: length that is in contact, for the press force and the torque, in `unit`.
    friction: friction where they meet, no unit; 0.12 for oiled steel.
    on: whether the interference is counted on the diameter, as a micrometer reads it.
    hub_material: what the hub is of, where its modulus is not typed.
    shaft_material: what the shaft is of, where its modulus is not typed.
    hub_modulus: modulus of the hub, where it is known better, in the pressure of `unit`.
    hub_poisson: Poisson's ratio of the hub, where it is known better, no unit.
    shaft_modulus: modulus of the shaft, where it is known better, in the pressure of `unit`.
    shaft_poisson: Poisson's ratio of the shaft, where it is known better, no unit.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where hub, shaft and bore do not lie inside one another.
    Source: Lamé's thick rings, as Shigley, Mechanical Engineering Design, press and shrink fits:
    p = δ/(d·((k_o + ν_o)/E_o + (k_i − ν_i)/E_i)); friction is common practice.

    >>> round(press_fit(interference=0.04, diameter=50, hub=80, hub_modulus=200e3,
    ...     shaft_modulus=200e3).value, 2)
    48.75
    """
    units = coherent(unit)
    joint = Joint(diameter, hub, bore, Member(hub_material, hub_modulus, hub_poisson),
                  Member(shaft_material, shaft_modulus, shaft_poisson))  # fmt: skip
    w = Working()
    c = joint_lines(w, joint, units)
    delta = _on_diameter(w, interference, on, units)
    if delta > MOST_SHARE * diameter:
        rule = f"is more than {100 * MOST_SHARE:g} % of the diameter: nothing elastic holds that"
        raise NotPossible(f"interference {delta:g} {unit}", rule, "look at its unit")
    p = w.step("p", "δ/C", delta / c, units.pressure, meaning="pressure between", answer="pressure")
    hoop_lines(w, joint, p, units)
    if length is not None:
        _held(w, p, diameter, length, friction, units)
    return Worked(p, w)


def _on_diameter(w: Working, interference: float, on: str, units: Coherent) -> float:
    """The interference on the diameter, however it was counted."""
    if on == "diameter":
        return w.given("δ", interference, units.length, meaning="interference on the diameter")
    w.given("δ_r", interference, units.length, meaning="interference on the radius")
    return w.step("δ", "2·δ_r", 2 * interference, units.length, meaning="on the diameter")


def _held(w: Working, p: float, d: float, length: float, friction: float, units: Coherent) -> None:
    """Force that presses it together, and torque that it holds before it slips."""
    w.given("L", length, units.length, meaning="length in contact")
    w.given("μ", friction, "", meaning="friction")
    f = w.step("F", "μ·p·π·d·L", friction * p * pi * d * length, units.force,
               meaning="to press it fully home, or off again", answer="press force")  # fmt: skip
    w.step("M", "F·d/2", f * d / 2, units.torque, meaning="before it slips", answer="torque")
