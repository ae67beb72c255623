from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Read, a_sum
from shimstock.trade.sums.geometry._points import EXAMPLE, read_points


@dataclass(frozen=True)
class Circle:
    """A circle, and the sum of the squares of what the points miss it by."""

    x: Length
    y: Length
    radius: Length
    misses: float


@a_sum(example="--points '9,34; 35,10; -13,6; 10,-14; 23,27; 0,-10' --unit mm")
def circle(
    *,
    points: Annotated[Sequence[tuple[Length, Length]], Read(read_points, EXAMPLE)],
    unit: str = "in",
) -> Worked[Circle]:
    """The circle that passes closest to measured points, by least squares of the distances.

    points: (x, y) of each point, in `unit`; at least three, not in one line.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible where the points make no circle.
    Source: geometric least squares; Gander, Golub and Strebel, 1994.

    >>> got = circle(points=[(1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)], unit="mm").value
    >>> round(got.x, 4), round(got.y, 4), round(got.radius, 4)
    (4.7398, 2.9835, 4.7142)
    """
    a, b = _centre(points)
    w = Working()
    for i, (x, y) in enumerate(points, 1):
        w.given(f"x_{i}", x, unit)
        w.given(f"y_{i}", y, unit)
    w.given("x_0", a, unit, meaning="x of the centre that leaves the least misses")
    w.given("y_0", b, unit, meaning="y of that centre")
    w.step("a", "x_0", a, unit, meaning="x of the centre", answer="x")
    w.step("b", "y_0", b, unit, meaning="y of the centre", answer="y")
    reach = [hypot(x - a, y - b) for x, y in points]
    for i, length in enumerate(reach, 1):
        w.step(f"d_{i}", f"√((x_{i} − a)² + (y_{i} − b)²)", length, unit)
    names = [f"d_{i}" for i in range(1, len(points) + 1)]
    r = w.step(
        "r",
        f"({' + '.join(names)})/{len(names)}",
        sum(reach) / len(reach),
        unit,
        meaning="radius",
        answer="radius",
    )
    misses = sum((length - r) ** 2 for length in reach)
    w.step("S", " + ".join(f"({name} − r)²" for name in names), misses, f"{unit}²")
    return Worked(Circle(Length(a), Length(b), Length(r), misses), w)


def _centre(points: Sequence[tuple[Length, Length]]) -> tuple[float, float]:
    """The centre whose distances to the points differ least from their mean."""
    if len(set(points)) < 3:
        raise NotPossible(f"{len(set(points))} points", "make no circle", "measure three or more")
    import numpy as np
    from scipy.optimize import least_squares

    at = np.asarray(points, dtype=float)
    middle = at.mean(axis=0)
    size = float(np.abs(at - middle).max())
    x, y = ((at - middle) / size).T

    # Start from the circle of least algebraic misses: x² + y² = 2ax + 2by + c.
    lines = np.column_stack([2 * x, 2 * y, np.ones_like(x)])
    start, _, rank, _ = np.linalg.lstsq(lines, x**2 + y**2, rcond=1e-9)
    if rank < 3:
        raise NotPossible("points in one line", "make no circle", "measure one well off it")

    def misses(centre: np.ndarray) -> np.ndarray:
        reach = np.hypot(x - centre[0], y - centre[1])
        return np.asarray(reach - reach.mean())

    found = least_squares(misses, start[:2], xtol=1e-15, ftol=1e-15, gtol=1e-15)
    a, b = found.x * size + middle
    return float(a), float(b)
