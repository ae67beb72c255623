"""Which shims of a drawer come nearest to a thickness: every pack that could is looked at."""

from collections.abc import Sequence

from shimstock.trade.numbers.not_possible import NotPossible

MOST_LOOKS = 1_000_000
Counts = tuple[int, ...]


def nearest(sizes: Sequence[int], pieces: Sequence[int], target: int) -> Counts:
    """How many of each size make the pack nearest to the target: least error, then fewest pieces.

    Where a thicker and a thinner pack are equally near with as many pieces, the thinner is taken.
    The thickest shims are laid first, and a pack that is thick enough is never made thicker, since
    that is only worse; so every pack that could be the nearest is looked at. Raises NotPossible
    where there are too many.

    >>> nearest([10, 15, 50], [4, 2, 1], 85)
    (2, 1, 1)
    """
    reached: dict[int, Counts] = {0: (0,) * len(sizes)}
    looks = 0
    for i in sorted(range(len(sizes)), key=lambda i: -sizes[i]):
        most = min(pieces[i], -(-target // sizes[i]))
        looks += len(reached) * most
        if looks > MOST_LOOKS:
            rule = f"makes more than {MOST_LOOKS} packs, too many to look at each"
            raise NotPossible("the drawer", rule, "name fewer shims, the likely ones")
        reached = _with(reached, i, sizes[i], most, target)
    best = min(reached, key=lambda total: (abs(total - target), sum(reached[total]), total))
    return reached[best]


def _with(
    reached: dict[int, Counts], i: int, size: int, most: int, target: int
) -> dict[int, Counts]:
    """The packs with up to so many shims of one more size."""
    grown = dict(reached)
    for total, counts in reached.items():
        for n in range(1, most + 1):
            thick = total + n * size
            if thick - size >= target:
                break
            pack = (*counts[:i], n, *counts[i + 1 :])
            if thick not in grown or sum(pack) < sum(grown[thick]):
                grown[thick] = pack
    return grown
