from collections.abc import Sequence
from itertools import pairwise, product
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST, CRANK
from shimstock.trade.sums.declare import Of, Read, a_sum
from shimstock.trade.sums.engine._cycle import Cycle
from shimstock.trade.sums.engine._firings import between

MOST = 12
EXAMPLE = "1-3-4-2"
Order = tuple[int, ...]


def read_order(text: str) -> Order:
    """Reads a firing order, each cylinder once. Raises NotUnderstood.

    >>> read_order("1-3-4-2"), read_order("2 1")
    ((1, 3, 4, 2), (2, 1))
    """
    parts = text.replace("–", " ").replace("-", " ").replace(",", " ").split()
    order = tuple(int(part) for part in parts if part.isascii() and part.isdigit())
    if len(order) < len(parts) or sorted(order) != list(range(1, len(parts) + 1)):
        raise NotUnderstood(text, "does not name each cylinder once, from 1 up", (EXAMPLE, "1-2"))
    if not 1 <= len(order) <= MOST:
        raise NotUnderstood(text, f"does not name 1 to {MOST} cylinders", (EXAMPLE, "1-2"))
    return order


@a_sum(example="--throws '0, 180, 180, 0' --order 1-3-4-2", cautions=(BOOK_FIRST, CRANK))
def firing_order(
    *,
    throws: Annotated[Sequence[float], Of("deg", least=0, below=360)],
    order: Annotated[Order, Read(read_order, EXAMPLE, found="firing order")],
    cycle: Cycle = "four-stroke",
) -> Worked[list[float]]:
    """At which crank angle each cylinder fires, from the throws and the firing order.

    An order that these throws cannot have is refused. Where more than one way fits, the evenest is
    taken. The camshaft decides the order; watch the inlet valves to see it.

    throws: how far after cylinder 1 each piston comes to its top, cylinder by cylinder, in deg.
    order: cylinders as they fire, no unit.
    cycle: four-stroke or two-stroke, no unit.
    Raises NotPossible where the order names other cylinders, or does not fit the throws.
    Source: geometry; a four-stroke's piston fires at each second top, a two-stroke's at each.

    >>> firing_order(throws=[0, 180, 180, 0], order=(1, 3, 4, 2)).value
    [0.0, 180.0, 360.0, 540.0]
    >>> firing_order(throws=[0, 180], order=(1, 2)).value
    [0.0, 180.0]
    """
    said = "-".join(map(str, order))
    if len(order) != len(throws):
        rule = f"names {len(order)} cylinders and there are {len(throws)} throws"
        raise NotPossible(f"order {said}", rule, "type one throw for each cylinder")
    turns = _turns([throws[number - 1] for number in order], 2 if cycle == "four-stroke" else 1)
    if turns is None:
        rule = "does not fit these throws in one cycle"
        raise NotPossible(f"order {said}", rule, "look at order and throws again")
    w = Working()
    angles = []
    for i, (number, more) in enumerate(zip(order, turns, strict=True), 1):
        throw = w.given(f"θ_{number}", throws[number - 1], "deg", meaning=f"throw {number}")
        w.given(f"m_{number}", more, "", meaning="whole turns later")
        angle = throw + 360 * more
        w.step(f"φ_{i}", f"θ_{number} + 360·m_{number}", angle, "deg",
               meaning=f"cylinder {number} fires", answer=f"cylinder {number}")  # fmt: skip
        angles.append(float(angle))
    between(w, angles, 720.0 if cycle == "four-stroke" else 360.0, cycle)
    return Worked(angles, w)


def _turns(throws: Sequence[float], most: int) -> tuple[int, ...] | None:
    """Whole turns that each waits, the first none; None where nothing fits within the cycle."""
    end = throws[0] + 360 * most
    waits = [[m for m in range(most + 1) if throws[0] < t + 360 * m < end] for t in throws[1:]]
    fitting = []
    for later in product(*waits):
        turns = (0, *later)
        angles = [t + 360 * more for t, more in zip(throws, turns, strict=True)]
        gaps = [b - a for a, b in pairwise([*angles, end])]
        if all(gap > 0 for gap in gaps):
            fitting.append((sum(gap**2 for gap in gaps), turns))
    return min(fitting)[1] if fitting else None
