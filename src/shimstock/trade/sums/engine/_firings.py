"""The angles in the cycle at which the cylinders fire."""

from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Firings = Annotated[Sequence[float], Of("deg", least=0, below=720)]
MOST = 16


def in_order(firings: Sequence[float], cycle: float) -> list[float]:
    """The firings from first to last. Raises NotPossible where they are none of this cycle."""
    angles = sorted(firings)
    if not angles or len(angles) > MOST:
        rule = f"are not 1 to {MOST}"
        raise NotPossible(f"{len(angles)} firings", rule, "type one angle for each cylinder")
    if angles[-1] >= cycle:
        rule = f"lies outside the cycle of {cycle:g} deg"
        raise NotPossible(f"firing at {angles[-1]:g} deg", rule, "count from the first cylinder")
    if len(set(angles)) < len(angles):
        raise NotPossible("two firings at one angle", "are one", "look at the throws again")
    return angles


def keep(w: Working, angles: Sequence[float]) -> None:
    """Keep the angles as φ_1, φ_2 and so on."""
    for i, angle in enumerate(angles, 1):
        w.given(f"φ_{i}", angle, "deg", meaning=f"firing {i} of the cycle")
