from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import PRESS
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._lame import Joint, Member, Stuff, hoop_lines, joint_lines


@a_sum(
    example="--pressure '30 MPa' --diameter '50 mm' --hub '80 mm'",
    cautions=(PRESS,),
)
def interference_for_pressure(
    *,
    diameter: Annotated[float, Of("length", above=0)],
    hub: Annotated[float, Of("length", above=0)],
    pressure: Annotated[float, Of("pressure", above=0)] | None = None,
    hub_hoop: Annotated[float, Of("pressure", above=0)] | None = None,
    bore: Annotated[float, Of("length", least=0)] = 0,
    hub_material: Stuff = "steel",
    shaft_material: Stuff = "steel",
    hub_modulus: Annotated[float, Of("pressure", above=0)] | None = None,
    hub_poisson: Annotated[float, Of("", least=0, below=0.5)] | None = None,
    shaft_modulus: Annotated[float, Of("pressure", above=0)] | None = None,
    shaft_poisson: Annotated[float, Of("", least=0, below=0.5)] | None = None,
    unit: str = "mm",
) -> Worked[float]:
    """Interference that gives a press fit its pressure, or the hub the hoop stress it may have.

    Some books count it on the radius, half of what a micrometer reads: both are given.

    diameter: where hub and shaft meet, in `unit`.
    hub: outside diameter of the hub, in `unit`.
    pressure: pressure wanted where they meet, in the pressure of `unit`.
    hub_hoop: hoop stress that the hub may have, instead of a pressure, in the pressure of `unit`.
    bore: bore of a hollow shaft, 0 for a solid one, in `unit`.
    hub_material: what the hub is of, where its modulus is not typed.
    shaft_material: what the shaft is of, where its modulus is not typed.
    hub_modulus: modulus of the hub, where it is known better, in the pressure of `unit`.
    hub_poisson: Poisson's ratio of the hub, where it is known better, no unit.
    shaft_modulus: modulus of the shaft, where it is known better, in the pressure of `unit`.
    shaft_poisson: Poisson's ratio of the shaft, where it is known better, no unit.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where not exactly one of pressure and hub_hoop is given, or where hub,
    shaft and bore do not lie inside one another.
    Source: Lamé's thick rings, as Shigley, Mechanical Engineering Design, press and shrink fits.

    >>> round(interference_for_pressure(pressure=30, diameter=250, hub=300, bore=200,
    ...     hub_modulus=200e3, shaft_modulus=200e3).value, 4)
    0.3788
    """
    if (pressure is None) == (hub_hoop is None):
        raise NotPossible("the fit", "is said by one of pressure and hub hoop", "give one of them")
    units = coherent(unit)
    joint = Joint(diameter, hub, bore, Member(hub_material, hub_modulus, hub_poisson),
                  Member(shaft_material, shaft_modulus, shaft_poisson))  # fmt: skip
    w = Working()
    c = joint_lines(w, joint, units)
    if pressure is not None:
        p = w.given("p", pressure, units.pressure, meaning="pressure wanted")
    else:
        most = w.given("σ_m", hub_hoop or 1, units.pressure, meaning="hoop stress of the hub")
        p = w.step("p", "σ_m/k_o", most / w.value("k_o"), units.pressure, answer="pressure")
    delta = w.step("δ", "p·C", p * c, units.length, meaning="as a micrometer reads it",
                   answer="on the diameter")  # fmt: skip
    w.step("δ_r", "δ/2", delta / 2, units.length, answer="on the radius")
    hoop_lines(w, joint, p, units)
    return Worked(delta, w)
