from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum

HOT_ROPE = (
    "A rope brake runs hot and can snatch: water on the drum, nobody beside the rope. Ask someone "
    "used to brake tests."
)


@a_sum(
    example="--weight '110 lbf' --spring '11 lbf' --drum '28 in' --rope '1 in' --speed '600 rpm'",
    cautions=(RUNNING, EXHAUST, HOT_ROPE),
)
def rope_brake(
    *,
    weight: Annotated[float, Of("N", least=0, most=100_000)],
    spring: Annotated[float, Of("N", least=0, most=100_000)],
    drum: Annotated[float, Of("m", above=0, most=5)],
    speed: Annotated[float, Of("rpm", above=0)],
    rope: Annotated[float, Of("m", least=0, most=0.2)] = 0,
) -> Worked[float]:
    """Power on a rope brake from its dead weight and spring balance.

    weight: pull of the hanging weight, in N.
    spring: what the spring balance at the slack end reads, in N.
    drum: diameter of the brake drum, in m.
    speed: speed of the drum, in rpm.
    rope: thickness of the rope, in m.
    Raises NotPossible where the spring pulls harder than the weight.
    Source: rope brake, P = (W − S)·π·(D + d)·n; Rajput, Textbook of Internal Combustion Engines,
    example 17.10.

    >>> round(rope_brake(weight=490.5, spring=50, drum=0.7, rope=0.025, speed=900).value, 2)
    15.05
    """
    if weight < spring:
        rule = f"must not be below the spring's pull, {spring:g} N"
        raise NotPossible(f"weight {weight:g} N", rule, "look whether the two are swapped")
    w = Working()
    w.given("W", weight, "N", meaning="pull of the weight")
    w.given("S", spring, "N", meaning="spring balance")
    w.given("D", drum, "m", meaning="drum")
    w.given("d", rope, "m", meaning="rope")
    w.given("n", speed, "rpm", meaning="speed")
    net = w.step("F", "W − S", weight - spring, "N", meaning="net pull")
    torque = net * (drum + rope) / 2
    w.step("T", "F·(D + d)/2", torque, "N.m", meaning="torque", answer="torque")
    power = 2 * pi * speed * torque / 60000
    w.step("P", "2·π·n·T/60000", power, "kW", meaning="brake power", answer="power")
    return Worked(power, w)
