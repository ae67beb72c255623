"""Which shims of a drawer come nearest to a thickness: every pack that could is looked at."""

from collections.abc import Sequence

from shimstock.trade.numbers.not_possible import NotPossible

MOST_PACKS = 200_000
Counts = tuple[int, ...]


def nearest(sizes: Sequence[int], pieces: Sequence[int], target: int) -> Counts:
    """How many of each size make the pack nearest to the target: least error, then fewest pieces.

    Where a thicker and a thinner pack are equally near with as many pieces, the thinner is taken.
    A pack that is thick enough already is never made thicker, since that is only worse; so every
    pack that could be the nearest is looked at. Raises NotPossible where there are too many.

    >>> nearest([10, 15, 50], [4, 2, 1], 85)
    (2, 1, 1)
    """
    reached: dict[int, Counts] = {0: (0,) * len(sizes)}
    for i in sorted(range(len(sizes)), key=lambda i: -sizes[i]):
        reached = _with(reached, i, sizes[i], pieces[i], target)
    best = min(reached, key=lambda total: (abs(total - target), sum(reached[total]), total))
    return reached[best]


def _with(
    reached: dict[int, Counts], i: int, size: int, pieces: int, target: int
) -> dict[int, Counts]:
    """The packs with up to so many shims of one more size."""
    grown = dict(reached)
    for total, counts in reached.items():
        for n in range(1, pieces + 1):
            thick = total + n * size
            if thick - size >= target:
                break
            pack = (*counts[:i], n, *counts[i + 1 :])
            if thick not in grown or sum(pack) < sum(grown[thick]):
                grown[thick] = pack
            if len(grown) > MOST_PACKS:
                rule = f"makes more than {MOST_PACKS} packs, too many to look at each"
                raise NotPossible("the drawer", rule, "name fewer shims, the likely ones")
    return grown
