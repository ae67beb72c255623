from math import pi, radians, sin
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._long_shoe import Friction, Length
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--friction 0.3 --width '2 in' --radius '6 in' --span 90 --pressure '100 psi'",
    cautions=(BRAKES, LINING_DUST),
)
def block_brake(
    *,
    friction: Friction,
    width: Length,
    radius: Length,
    span: Annotated[float, Of("deg", least=1, most=180)],
    pressure: Annotated[float, Of("pressure", above=0)],
    blocks: Annotated[int, Of("", least=1)] = 1,
    unit: str = "mm",
) -> Worked[float]:
    """Torque of blocks pivoted outside a drum, and where the pivot must be so that none tips.

    friction: friction of the lining on the drum, no unit.
    width: width of the lining, in `unit`.
    radius: radius of the drum, in `unit`.
    span: angle of the drum that one block covers, its pivot in the middle, in deg.
    pressure: largest pressure, in the middle of the block, in the pressure of `unit`.
    blocks: blocks alike on the drum, a count.
    unit: unit of the lengths, mm or in.
    Source: pivoted shoe with the pressure falling with the cosine; V. B. Bhandari, Design of
    Machine Elements, example 12.7; U. C. Jindal, Machine Design, example 23-3.

    >>> round(block_brake(friction=0.2, width=100, radius=250, span=100, pressure=0.5).value, 1)
    957555.6
    """
    units, w = coherent(unit), Working()
    w.given("μ", friction, "", meaning="friction of lining on drum")
    w.given("b", width, unit, meaning="width of the lining")
    w.given("R", radius, unit, meaning="radius of the drum")
    w.given("β", span, "deg", meaning="angle that one block covers")
    w.given("p", pressure, units.pressure, meaning="largest pressure")
    w.given("n_b", blocks, "", meaning="blocks")
    spread = w.step("s", "β·π/180 + sin(β)", span * pi / 180 + sin(radians(span)), "")
    half = w.step("s_h", "sin(β/2)", sin(radians(span) / 2), "")
    w.step("h", "4·R·s_h/s", 4 * radius * half / spread, unit,
           meaning="from the drum's centre to the pivot", answer="pivot distance")  # fmt: skip
    across = w.step("R_x", "p·b·R·s/2", pressure * width * radius * spread / 2, units.force,
                    meaning="pushes one block on the drum", answer="push")  # fmt: skip
    w.step("R_y", "μ·R_x", friction * across, units.force,
           meaning="drags one block along", answer="drag")  # fmt: skip
    each = 2 * friction * pressure * width * radius**2 * half
    w.step("T_1", "2·μ·p·b·R²·s_h", each, units.torque, meaning="of one block")
    torque = w.step("T", "n_b·T_1", blocks * each, units.torque, answer="torque")
    return Worked(torque, w)
