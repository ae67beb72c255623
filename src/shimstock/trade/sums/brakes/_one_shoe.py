"""One shoe worked out from its pressure or from its force, inside a drum or outside."""

from dataclasses import dataclass

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._long_shoe import (
    LOCKED,
    PerPressure,
    Shoe,
    Turning,
    closing,
    hinge,
    one_of_two,
    per_pressure,
)


@dataclass(frozen=True)
class Pressed:
    """How a shoe is pressed: the arm of the force, and either the pressure or the force."""

    arm: float
    pressure: float | None
    force: float | None
    turning: Turning
    tilt: float | None


def one_shoe(shoe: Shoe, how: Pressed, *, outside: bool, unit: str) -> Worked[float]:
    """Pressure, force, moments, torque and, where the lean is known, the reaction of the hinge.

    Raises NotPossible where pressure and force are both given or both missing, and where a force
    is asked of a shoe that locks.
    """
    one_of_two(how.pressure, how.force)
    w = Working()
    per = per_pressure(w, shoe, unit)
    w.given("c", how.arm, unit, meaning="arm of the force about the hinge")
    net = closing(w, per, how.turning, unit)
    p = _pressure(w, how, net, unit)
    torque = _moments(w, per, p, coherent(unit).torque)
    helps = (how.turning == "leading") == (per.friction > 0)
    w.tell("friction", "helps the shoe" if helps else "hinders the shoe")
    w.tell("self-locking", "yes" if net <= 0 else "no")
    if how.tilt is not None:
        w.given("α", how.tilt, "deg", meaning="lean of the force")
        hinge(w, how.turning, tilt=how.tilt, outside=outside, mark="", unit=unit)
    return Worked(torque, w)


def _pressure(w: Working, how: Pressed, net: float, unit: str) -> float:
    """The largest pressure; force and pressure both stand in the working afterwards."""
    units = coherent(unit)
    symbol = "m_1" if how.turning == "leading" else "m_2"
    if how.pressure is not None:
        p = w.given("p", how.pressure, units.pressure, meaning="largest pressure")
        w.step("F", f"p·{symbol}/c", p * net / how.arm, units.force, answer="force")
        return p
    assert how.force is not None, "one of the two is given"
    if net <= 0:
        raise NotPossible("the shoe", *LOCKED)
    f = w.given("F", how.force, units.force, meaning="force on the shoe")
    return w.step("p", f"F·c/{symbol}", f * how.arm / net, units.pressure, answer="pressure")


def _moments(w: Working, per: PerPressure, p: float, torque: str) -> float:
    w.step("M_f", "m_f·p", per.friction * p, torque, answer="friction moment")
    w.step("M_n", "m_n·p", per.normal * p, torque, answer="normal moment")
    return w.step("T", "m_t·p", per.torque * p, torque, answer="torque")
