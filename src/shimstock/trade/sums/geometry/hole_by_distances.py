from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, Read, a_sum
from shimstock.trade.sums.geometry._points import EXAMPLE, read_points

Point = tuple[Length, Length]
IN_LINE = 1e-6  # of the product of two sides: three points so flat fix nothing
WORST_MISS = 0.05  # of the longest distance: beyond it something was measured wrong


@dataclass(frozen=True)
class Hole:
    """Where a hole is, and by how much the distances miss it at the worst."""

    x: Length
    y: Length
    misfit: Length


@a_sum(example="--points '0,0; 6,0; 0,4' --distances '3.606, 5, 2.236 in'")
def hole_by_distances(
    *,
    points: Annotated[Sequence[Point], Read(read_points, EXAMPLE)],
    distances: Annotated[Sequence[Length], Of("length", above=0)],
    unit: str = "in",
) -> Worked[Hole]:
    """Where a hole is, from its distances to three holes whose places are known.

    points: (x, y) of the three known holes, in `unit`; not in one line.
    distances: from each of them to the hole in the same order, centre to centre, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible without three of each, for points in one line, or where nothing meets.
    Source: geometry; the three circles taken from one another leave two straight lines.

    >>> got = hole_by_distances(points=[(1, 2), (1, 1), (2, 2)], distances=[1.414, 2.236, 1.0])
    >>> round(got.value.x, 5), round(got.value.y, 5)
    (1.9997, 3.00015)
    """
    flat = _twice_the_area(points, distances)
    w = Working()
    for i, ((x, y), r) in enumerate(zip(points, distances, strict=True), 1):
        w.given(f"x_{i}", x, unit)
        w.given(f"y_{i}", y, unit)
        w.given(f"r_{i}", r, unit, meaning=f"from hole {i}")
    (a_2, b_2, c_2), (a_3, b_3, c_3) = (_line(w, i, points, distances, unit) for i in (2, 3))
    w.step("D", "a_2·b_3 − a_3·b_2", flat, f"{unit}²", meaning="twice the triangle of the three")
    at_x = points[0][0] + (c_2 * b_3 - c_3 * b_2) / flat
    at_y = points[0][1] + (a_2 * c_3 - a_3 * c_2) / flat
    w.step("x", "x_1 + (c_2·b_3 − c_3·b_2)/D", at_x, unit, answer="x")
    w.step("y", "y_1 + (a_2·c_3 − a_3·c_2)/D", at_y, unit, answer="y")
    known = zip(points, distances, strict=True)
    misses = [abs(hypot(at_x - x, at_y - y) - r) for (x, y), r in known]
    for i, miss in enumerate(misses, 1):
        w.step(f"e_{i}", f"|√((x − x_{i})² + (y − y_{i})²) − r_{i}|", miss, unit)
    worst = w.step("e", "max(e_1, e_2, e_3)", max(misses), unit, meaning="missed by, at the worst",
                   answer="misfit")  # fmt: skip
    if worst > WORST_MISS * max(distances):
        rule = f"do not meet: the nearest crossing misses by {worst:.3g} {unit}"
        raise NotPossible("the three distances", rule, "measure them again, centre to centre")
    return Worked(Hole(Length(at_x), Length(at_y), Length(worst)), w)


def _twice_the_area(points: Sequence[Point], distances: Sequence[Length]) -> float:
    """Of the triangle of the known holes, with its sign."""
    if len(points) != 3 or len(distances) != 3:
        counts = f"{len(points)} points and {len(distances)} distances"
        raise NotPossible(counts, "fix no hole", "three of each do")
    (p, q), *others = points
    (a_2, b_2), (a_3, b_3) = ((x - p, y - q) for x, y in others)
    flat = a_2 * b_3 - a_3 * b_2
    if abs(flat) <= IN_LINE * hypot(a_2, b_2) * hypot(a_3, b_3):
        raise NotPossible("holes in one line", "leave two places for it", "take one well off it")
    return flat


def _line(
    w: Working, i: int, points: Sequence[Point], distances: Sequence[Length], unit: str
) -> tuple[float, float, float]:
    """The line a·u + b·v = c from hole 1 on which circles 1 and i cross."""
    (p, q), (x, y) = points[0], points[i - 1]
    a = w.step(f"a_{i}", f"x_{i} − x_1", x - p, unit)
    b = w.step(f"b_{i}", f"y_{i} − y_1", y - q, unit)
    c = (distances[0] ** 2 - distances[i - 1] ** 2 + a**2 + b**2) / 2
    w.step(f"c_{i}", f"(r_1² − r_{i}² + a_{i}² + b_{i}²)/2", c, f"{unit}²")
    return a, b, c
