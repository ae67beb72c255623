from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, HAND_CLEAR_OF_PTO, RUNNING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--load '142 lbf' --tare '20 lbf' --arm '63 in' --speed '540 rpm'",
    cautions=(RUNNING, HAND_CLEAR_OF_PTO, EXHAUST),
)
def brake_load_power(
    *,
    load: Annotated[float, Of("N", least=0, most=100_000)],
    arm: Annotated[float, Of("m", above=0, most=5)],
    speed: Annotated[float, Of("rpm", above=0)],
    tare: Annotated[float, Of("N")] = 0,
) -> Worked[float]:
    """Torque and power on an arm brake: what the scale reads, less what the arm itself weighs.

    load: what the scale reads with the brake on, in N.
    arm: from the centre of the shaft square to the line of the scale, in m.
    speed: speed of the shaft that is braked, in rpm.
    tare: what the scale reads with the brake slack, in N.
    Raises NotPossible where the load is less than the tare.
    Source: arm (prony) brake, P = 2·π·n·F·R; Kates, Diesel and High Compression Gas Engines.

    >>> round(brake_load_power(load=160, arm=0.35, speed=3000).value, 3)
    17.593
    """
    if load < tare:
        rule = f"must not be below the tare, {tare:g} N"
        raise NotPossible(f"load {load:g} N", rule, "look whether the two are swapped")
    w = Working()
    w.given("W", load, "N", meaning="load on the scale")
    w.given("W_0", tare, "N", meaning="tare of the arm")
    w.given("R", arm, "m", meaning="arm")
    w.given("n", speed, "rpm", meaning="speed of the braked shaft")
    net = w.step("F", "W − W_0", load - tare, "N", meaning="net load")
    torque = w.step("T", "F·R", net * arm, "N.m", meaning="torque", answer="torque")
    power = 2 * pi * speed * torque / 60000
    w.step("P", "2·π·n·T/60000", power, "kW", meaning="brake power", answer="power")
    return Worked(power, w)
