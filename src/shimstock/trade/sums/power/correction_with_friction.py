from collections.abc import Sequence
from itertools import pairwise
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

# Mean piston speed in ft/min, friction torque in lbf.ft for each cubic inch.
FRICTION: Sequence[tuple[float, float]] = (
    (0, 0.088), (500, 0.105), (1000, 0.120), (1500, 0.145), (2000, 0.170), (2500, 0.203),
    (3000, 0.233),
)  # fmt: skip


@a_sum(example="--torque '150 lbf.ft' --displacement '200 in3' --piston-speed '1000 ft/min' "
       "--correction 1.05")  # fmt: skip
def correction_with_friction(
    *,
    torque: Annotated[float, Of("lbf.ft", above=0)],
    displacement: Annotated[float, Of("in3", above=0, found="displacement")],
    piston_speed: Annotated[float, Of("ft/min", least=0, most=3000)],
    correction: Annotated[float, Of("", above=0, most=3)],
) -> Worked[float]:
    """Torque corrected to reference air with the friction of the engine left out of the correction.

    The air changes what the gas does, not what the bearings and rings take.

    torque: torque on the brake, in lbf.ft.
    displacement: swept volume of all cylinders, in in3.
    piston_speed: mean speed of the pistons, in ft/min.
    correction: of the older 60 °F basis, no unit.
    Source: T_c = (T + F)·c − F on the older 60 °F basis, with the friction table that a mailing
    list of engine builders gives (1995).

    >>> round(correction_with_friction(torque=150, displacement=200, piston_speed=1000,
    ...     correction=1.05).value, 2)
    158.7
    """
    w = Working()
    w.given("T", torque, "lbf.ft", meaning="torque on the brake")
    w.given("V", displacement, "in3", meaning="swept volume")
    w.given("s", piston_speed, "ft/min", meaning="mean piston speed")
    w.given("c", correction, "", meaning="correction")
    friction = _friction(w, piston_speed) * displacement
    w.step("F", "f·V", friction, "lbf.ft", meaning="friction torque", answer="friction")
    result = (torque + friction) * correction - friction
    w.step("T_c", "(T + F)·c − F", result, "lbf.ft", meaning="corrected", answer="corrected torque")
    return Worked(result, w)


def _friction(w: Working, speed: float) -> float:
    """Friction for each cubic inch, straight between the two entries of the table."""
    (s_1, f_1), (s_2, f_2) = next(pair for pair in pairwise(FRICTION) if speed <= pair[1][0])
    factor = f_1 + (speed - s_1) / (s_2 - s_1) * (f_2 - f_1)
    shown = f"{f_1:g} + (s − {s_1:g})/{s_2 - s_1:g}·({f_2:g} − {f_1:g})"
    return w.step("f", shown, factor, "", meaning="friction, lbf.ft for each in3")
