"""The angles in the cycle at which the cylinders fire."""

from collections.abc import Sequence
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Firings = Annotated[Sequence[float], Of("deg", least=0, below=720)]
MOST = 16
EVEN = 1.0  # degrees that intervals may differ by and still be called even


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


def between(w: Working, angles: Sequence[float], cycle: float, name: str) -> list[float]:
    """Degrees from each firing to the next, kept as Δ_1, Δ_2 and so on; φ_1 … already there.

    The cycle is kept as c, and whether the beat is even is told.
    """
    c = w.given("c", cycle, "deg", meaning=f"cycle, {name}")
    gaps = []
    for i, angle in enumerate(angles, 1):
        last = i == len(angles)
        gap = (angles[0] + c if last else angles[i]) - angle
        shown = f"φ_1 + c − φ_{i}" if last else f"φ_{i + 1} − φ_{i}"
        gaps.append(w.step(f"Δ_{i}", shown, gap, "deg", answer=f"interval {i}"))
    w.tell("beat", "even" if max(gaps) - min(gaps) < EVEN else "uneven")
    return gaps
