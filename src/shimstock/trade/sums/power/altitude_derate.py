from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--power '38 hp' --altitude '4500 ft'")
def altitude_derate(
    *,
    power: Annotated[float, Of("hp", above=0)],
    altitude: Annotated[float, Of("ft", least=-1500, most=30000)],
    loss: Annotated[float, Of("%", least=0, most=100)] = 3,
    free: Annotated[float, Of("ft", least=0)] = 500,
) -> Worked[float]:
    """Power left to an engine without blower at a height above the sea.

    A rule of thumb, not a correction to reference air: for that see the corrections by standard.

    power: at the sea, in hp.
    altitude: height of the place, in ft.
    loss: for each 1000 ft above the free height, in %.
    free: height up to which nothing is lost, in ft.
    Raises NotPossible where nothing would be left.
    Source: 3 per cent for each 1000 ft above 500 ft; Introduction to Agricultural Engineering
    Technology, power problems.

    >>> round(altitude_derate(power=225, altitude=4500).value, 2)
    198.0
    """
    w = Working()
    w.given("P", power, "hp", meaning="power at the sea")
    w.given("h", altitude, "ft", meaning="altitude")
    w.given("x", loss, "%", meaning="lost for each 1000 ft")
    w.given("h_0", free, "ft", meaning="height without loss")
    lost = loss * max(0, altitude - free) / 1000
    if lost >= 100:
        said = f"a loss of {loss:g} % for each 1000 ft"
        raise NotPossible(said, f"would leave nothing at {altitude:g} ft", "look at both again")
    w.step("X", "x·max(0, h − h_0)/1000", lost, "%", meaning="lost", answer="loss")
    left = power * (1 - lost / 100)
    w.step("P_h", "P·(1 − X/100)", left, "hp", meaning="power left", answer="power")
    return Worked(left, w)
