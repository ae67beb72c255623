from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import RUNNING
from shimstock.trade.sums.declare import Of, Read, a_sum
from shimstock.trade.sums.drive._pulleys import EXAMPLE, Pair, read_pairs


@a_sum(example="--speed 975 --pulleys '14/8 in' --thickness '1/4 in' --slip 2",
       cautions=(RUNNING,))  # fmt: skip
def pulley_speed(
    *,
    speed: Annotated[float, Of("rpm", least=0)],
    pulleys: Annotated[Sequence[Pair], Read(read_pairs, EXAMPLE)],
    thickness: Annotated[float, Of("mm", least=0, most=50)] = 0.0,
    slip: Annotated[float, Of("%", least=0, below=100)] = 0.0,
) -> Worked[float]:
    """Speed of the last pulley of one belt or of several, with the belt's thickness and its slip.

    speed: of the first pulley, in rpm.
    pulleys: driving / driven diameters of each belt in order, with their unit or bare.
    thickness: of the belt, in mm.
    slip: of each belt, in %.
    Raises NotPossible where bare diameters stand beside a thickness.
    Source: Khurmi and Gupta, Theory of Machines, example 11.1, page 333; B. K. Sarkar, Theory of
    Machines, illustrations 2.1 and 2.2, page 57.

    >>> round(pulley_speed(speed=150, pulleys=read_pairs("750/450, 900/150"), slip=2).value, 1)
    1440.6
    """
    bare = next((pair for pair in pulleys if not pair.measured), None)
    if thickness > 0 and bare is not None:
        rule = "have no unit, and the belt's thickness has one"
        raise NotPossible(f"pulleys {bare}", rule, "type them as 14/8 in")
    w = Working()
    last = w.given("n_0", speed, "rpm", meaning="first pulley")
    w.given("t", thickness, "mm", meaning="thickness of the belt")
    w.given("s", slip, "%", meaning="slip of each belt")
    for i, pair in enumerate(pulleys, 1):
        of = "mm" if pair.measured else ""
        w.given(f"D_{i}", pair.driving, of, meaning=f"belt {i}, driving")
        w.given(f"d_{i}", pair.driven, of, meaning=f"belt {i}, driven")
        final = i == len(pulleys)
        last *= (pair.driving + thickness) / (pair.driven + thickness) * (1 - slip / 100)
        w.step(
            f"n_{i}", f"n_{i - 1}·(D_{i} + t)/(d_{i} + t)·(1 − s/100)", last, "rpm",
            meaning=f"driven pulley of belt {i}", answer="speed" if final else "",
        )  # fmt: skip
    return Worked(last, w)
