from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Roundness:
    """Mean reading, how far off centre the part turns, and how far it is from round."""

    mean: Length
    off_x: Length
    off_y: Length
    out_of_round: Length


@a_sum(example="--readings '3, 1, -1, -3, -2, 0, 2, 3' --unit thou")
def roundness(
    *, readings: Annotated[Sequence[Length], Of("length")], unit: str = "in"
) -> Worked[Roundness]:
    """Out-of-round of a part turned under a dial, with its being off centre taken out.

    readings: dial readings at equal steps of one full turn, in `unit`; at least four, better eight.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible for fewer than four readings.
    Source: least squares reference circle of roundness measurement, equally spaced readings.

    >>> got = roundness(readings=[Length(r) for r in (3, 1, -3, -1)], unit="thou").value
    >>> round(got.off_x, 3), round(got.off_y, 3), round(got.out_of_round, 3)
    (3.0, 1.0, 0.0)
    """
    count = len(readings)
    if count < 4:
        raise NotPossible(f"{count} readings", "are too few", "take four or more, at equal steps")
    w = Working()
    turns = [_given(w, i, reading, count, unit) for i, reading in enumerate(readings, 1)]
    pairs = list(zip(readings, turns, strict=True))
    mean = w.step(
        "m", f"({_sum('r_{}', count)})/{count}", sum(readings) / count, unit, meaning="mean reading"
    )
    x = 2 / count * sum(r * cos(t) for r, t in pairs)
    y = 2 / count * sum(r * sin(t) for r, t in pairs)
    w.step(
        "a",
        f"2/{count}·({_sum('r_{}·cos(θ_{})', count)})",
        x,
        unit,
        meaning="off at 0 deg",
        answer="off x",
    )
    w.step(
        "b",
        f"2/{count}·({_sum('r_{}·sin(θ_{})', count)})",
        y,
        unit,
        meaning="off at 90 deg",
        answer="off y",
    )
    left = [r - mean - x * cos(t) - y * sin(t) for r, t in pairs]
    for i, rest in enumerate(left, 1):
        w.step(f"e_{i}", f"r_{i} − m − a·cos(θ_{i}) − b·sin(θ_{i})", rest, unit)
    names = ", ".join(f"e_{i}" for i in range(1, count + 1))
    out = w.step(
        "Δr",
        f"max({names}) − min({names})",
        max(left) - min(left),
        unit,
        meaning="out of round",
        answer="out of round",
    )
    return Worked(Roundness(Length(mean), Length(x), Length(y), Length(out)), w)


def _given(w: Working, i: int, reading: float, count: int, unit: str) -> float:
    """Keeps one reading and the turn it was taken at, and hands back the turn in radians."""
    w.given(f"r_{i}", reading, unit)
    return radians(w.given(f"θ_{i}", 360 * (i - 1) / count, "deg"))


def _sum(term: str, count: int) -> str:
    return " + ".join(term.replace("{}", str(i)) for i in range(1, count + 1))
