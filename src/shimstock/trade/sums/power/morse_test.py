from collections.abc import Sequence
from math import pi
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, HIGH_PRESSURE_FUEL, RUNNING, SHOCK
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.power._cut_out import indicated


@a_sum(
    example="--load '36 lbf' --cut '25 lbf, 24 lbf, 25 lbf, 24.5 lbf' --arm '14 in' "
    "--speed '1500 rpm'",
    cautions=(RUNNING, SHOCK, HIGH_PRESSURE_FUEL, EXHAUST),
)
def morse_test(
    *,
    load: Annotated[float, Of("N", above=0, most=100_000)],
    cut: Annotated[Sequence[float], Of("N", least=0, most=100_000)],
    arm: Annotated[float, Of("m", above=0, most=5)],
    speed: Annotated[float, Of("rpm", above=0)],
) -> Worked[float]:
    """Indicated power, friction and mechanical efficiency by cutting out one cylinder at a time.

    The brake is let off each time until the speed is the same again.

    load: on the brake with all cylinders firing, in N.
    cut: loads with each cylinder in turn cut out, in N.
    arm: arm of the brake, in m.
    speed: speed of the brake, the same for all readings, in rpm.
    Raises NotPossible where a reading does not fall when its cylinder is cut, or they do not add
    up.
    Source: Morse test; Rajput, Textbook of Internal Combustion Engines, example 17.46.

    >>> round(morse_test(load=160, cut=[110, 107, 104, 110], arm=0.37, speed=2800).value, 2)
    76.56
    """
    w = Working()
    w.given("F", load, "N", meaning="all cylinders firing")
    _, total = indicated(w, "F", load, cut, "N")
    w.given("R", arm, "m", meaning="arm of the brake")
    w.given("n", speed, "rpm", meaning="speed")
    brake = 2 * pi * speed * load * arm / 60000
    w.step("P", "2·π·n·F·R/60000", brake, "kW", meaning="on the brake", answer="brake power")
    inside = w.step("P_i", "P·F_i/F", brake * total / load, "kW", meaning="indicated",
                    answer="indicated power")  # fmt: skip
    w.step("P_f", "P_i − P", inside - brake, "kW", meaning="friction", answer="friction power")
    share = w.step("η", "100·F/F_i", 100 * load / total, "%", meaning="mechanical efficiency",
                   answer="mechanical efficiency")  # fmt: skip
    return Worked(share, w)
