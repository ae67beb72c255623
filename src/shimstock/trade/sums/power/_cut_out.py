"""What the cut-out test says: each cylinder's own share, and what the engine itself takes."""

from collections.abc import Sequence

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working


def indicated(
    w: Working, symbol: str, running: float, cut: Sequence[float], unit: str
) -> tuple[str, float]:
    """Symbol and value of the sum of what each cylinder adds.

    Raises NotPossible where a cut cylinder leaves the reading as high, or where the cylinders
    together would give less than the brake gets.
    """
    if len(cut) < 2:
        rule = "must be at least two, one for each cylinder"
        raise NotPossible("the readings with a cylinder cut", rule, "type them as: 110, 107")
    for i, one in enumerate(cut, start=1):
        if one >= running:
            said = f"reading with cylinder {i} cut, {one:g} {unit}"
            rule = f"must be below that with all firing, {running:g} {unit}"
            raise NotPossible(said, rule, "look whether it was cut at all, or does not fire")
        w.given(f"{symbol}_{i}", one, unit, meaning=f"with cylinder {i} cut")
    names = [f"({symbol} − {symbol}_{i})" for i in range(1, len(cut) + 1)]
    total = sum(running - one for one in cut)
    if total <= running:
        said = f"the cylinders together, {total:g} {unit},"
        rule = f"must give more than the brake gets, {running:g} {unit}"
        raise NotPossible(said, rule, "the speed must be the same in each reading: measure again")
    return f"{symbol}_i", w.step(f"{symbol}_i", " + ".join(names), total, unit, meaning="indicated")
