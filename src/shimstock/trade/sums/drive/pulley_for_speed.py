from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--driving '14 in' --speed 975 --wanted 1500 --slip 2 --thickness '1/4 in'",
       cautions=(RUNNING,))  # fmt: skip
def pulley_for_speed(
    *,
    driving: Annotated[float, Of("length", above=0, found="pulley diameter")],
    speed: Annotated[float, Of("rpm", above=0)],
    wanted: Annotated[float, Of("rpm", above=0)],
    thickness: Annotated[float, Of("length", least=0)] = 0.0,
    slip: Annotated[float, Of("%", least=0, below=100)] = 0.0,
    unit: str = "mm",
) -> Worked[float]:
    """Diameter of the driven pulley for a wanted speed.

    driving: diameter of the driving pulley, in `unit`.
    speed: of the driving pulley, in rpm.
    wanted: speed of the driven pulley, in rpm.
    thickness: of the belt, in `unit`.
    slip: of the belt, in %.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the belt is thicker than the pulley would be.
    Source: B. K. Sarkar, Theory of Machines, illustration 2.1, page 57.

    >>> round(pulley_for_speed(driving=600, speed=300, wanted=400, thickness=8, slip=5).value, 1)
    425.2
    """
    w = Working()
    w.given("D", driving, unit, meaning="driving pulley")
    w.given("n_1", speed, "rpm", meaning="its speed")
    w.given("n_2", wanted, "rpm", meaning="speed wanted")
    w.given("t", thickness, unit, meaning="belt")
    w.given("s", slip, "%", meaning="slip")
    driven = (driving + thickness) * speed / wanted * (1 - slip / 100) - thickness
    if driven <= 0:
        raise NotPossible(f"{wanted:g} rpm", "is too fast for any pulley", "use two belts")
    w.step("d", "(D + t)·n_1/n_2·(1 − s/100) − t", driven, unit, answer="diameter")
    return Worked(driven, w)
