"""A leading and a trailing shoe of one size under one force."""

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._long_shoe import (
    LOCKED,
    PerPressure,
    Shoe,
    closing,
    hinge,
    one_of_two,
    per_pressure,
)


def two_shoes(
    shoe: Shoe,
    arm: float,
    *,
    pressure: float | None,
    force: float | None,
    tilt: float | None,
    unit: str,
) -> Worked[float]:
    """Pressures, force, torques and, where the lean is known, the reactions of the hinges."""
    one_of_two(pressure, force)
    units, w = coherent(unit), Working()
    if force is not None:
        w.given("F", force, units.force, meaning="force on each shoe")
    torque = pair(w, shoe, arm, pressure=pressure, force=force, unit=unit)
    if tilt is not None:
        w.given("α", tilt, "deg", meaning="lean of the force")
        hinge(w, "leading", tilt=tilt, outside=False, mark="_1", unit=unit)
        hinge(w, "trailing", tilt=tilt, outside=False, mark="_2", unit=unit)
    return Worked(torque, w)


def pair(
    w: Working,
    shoe: Shoe,
    arm: float,
    *,
    pressure: float | None,
    force: float | None,
    unit: str,
) -> float:
    """Torque of both shoes; a force that is known stands in the working already, as F.

    Raises NotPossible where the leading shoe locks.
    """
    units, per = coherent(unit), per_pressure(w, shoe, unit)
    w.given("c", arm, unit, meaning="arm of the force about the hinge")
    leading = closing(w, per, "leading", unit)
    trailing = closing(w, per, "trailing", unit)
    if leading <= 0:
        raise NotPossible("the leading shoe", *LOCKED)
    if pressure is not None:
        p_1 = w.given("p_1", pressure, units.pressure, meaning="on the leading shoe")
        force = w.step("F", "p_1·m_1/c", p_1 * leading / arm, units.force, answer="force")
    else:
        assert force is not None, "one of the two is given"
        p_1 = w.step(
            "p_1", "F·c/m_1", force * arm / leading, units.pressure, answer="leading pressure"
        )
    p_2 = w.step(
        "p_2", "F·c/m_2", force * arm / trailing, units.pressure, answer="trailing pressure"
    )
    return _torques(w, per, p_1, p_2, units.torque)


def _torques(w: Working, per: PerPressure, p_1: float, p_2: float, torque: str) -> float:
    w.step("M_f", "m_f·p_1", per.friction * p_1, torque, answer="friction moment")
    w.step("M_n", "m_n·p_1", per.normal * p_1, torque, answer="normal moment")
    t_1 = w.step("T_1", "m_t·p_1", per.torque * p_1, torque, answer="leading torque")
    t_2 = w.step("T_2", "m_t·p_2", per.torque * p_2, torque, answer="trailing torque")
    return w.step("T", "T_1 + T_2", t_1 + t_2, torque, answer="torque")
