"""In which order bolts are pulled: from the middle outwards, and across."""

from collections.abc import Sequence
from math import cos, dist, pi, sin

Point = tuple[float, float]
FAR = 6  # digits, in least gaps, after which two distances count as equal


def middle_of(holes: Sequence[Point]) -> Point:
    """The middle of all holes."""
    return (
        sum(x for x, _ in holes) / len(holes),
        sum(y for _, y in holes) / len(holes),
    )


def on_a_circle(count: int) -> list[Point]:
    """Holes on a circle of radius 1, the first at the top, the others clockwise."""
    angles = (2 * pi * i / count for i in range(count))
    return [(sin(angle), cos(angle)) for angle in angles]


def order(holes: Sequence[Point]) -> list[int]:
    """Numbers of the holes, from 0, in the order of pulling.

    Of those about as near to the middle as the nearest that is left, every second one lies across
    from the one before, and the others as far as can be from all that are pulled.

    >>> order(on_a_circle(6))
    [0, 3, 1, 4, 2, 5]
    """
    middle, gap = middle_of(holes), _least_gap(holes)
    scaled = [(x / gap, y / gap) for x, y in holes]
    out = [dist(hole, middle) for hole in holes]
    left, done, ring = set(range(len(holes))), list[int](), list[int]()
    while left:
        inner = min(out[i] for i in left) + gap / 2
        at_hand = sorted(i for i in left if out[i] <= inner)
        if not any(out[i] <= inner for i in ring):
            ring = []
        chosen = _next(scaled, at_hand, ring, done)
        ring.append(chosen)
        done.append(chosen)
        left.remove(chosen)
    return done


def _next(
    holes: Sequence[Point], at_hand: Sequence[int], ring: Sequence[int], done: Sequence[int]
) -> int:
    """The next hole; the lowest number where several would do equally."""
    if not done:
        return at_hand[0]
    last = holes[done[-1]]

    def across(i: int) -> float:
        return round(dist(holes[i], last), FAR)

    def apart(i: int) -> float:
        return round(min(dist(holes[i], holes[j]) for j in ring or done), FAR)

    if len(ring) % 2:
        return max(at_hand, key=lambda i: (across(i), apart(i), -i))
    return max(at_hand, key=lambda i: (apart(i), across(i), -i))


def _least_gap(holes: Sequence[Point]) -> float:
    return min((dist(a, b) for i, a in enumerate(holes) for b in holes[i + 1 :]), default=0.0)
