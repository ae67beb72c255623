from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Scale:
    """What the tolerances that can be chosen are multiplied by."""

    worst: float
    rss: float


@a_sum(example="--bought '0.0015, 0.0025 in' --chosen '0.008, 0.002, 0.006 in' --wanted '0.015 in'")
def tolerance_scale(
    *,
    bought: Annotated[Sequence[Length], Of("length", least=0)],
    chosen: Annotated[Sequence[Length], Of("length", least=0)],
    wanted: Annotated[Length, Of("length", above=0)],
    unit: str = "in",
) -> Worked[Scale]:
    """By how much the tolerances that can be chosen must shrink, or may grow, to meet a total.

    bought: tolerances that cannot be changed, each ±, in `unit`.
    chosen: tolerances that can, each ±, in `unit`.
    wanted: ± that the whole stack may have, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible where the bought parts alone use up what is wanted.
    Source: proportional scaling of tolerances, worst case and root of the sum of squares.

    >>> got = tolerance_scale(bought=[Length(1)], chosen=[Length(2)], wanted=Length(3))
    >>> got.value.worst, round(got.value.rss, 4)
    (1.0, 1.4142)
    """
    if not chosen or sum(chosen) <= 0 or wanted <= sum(bought):
        raise NotPossible(
            f"± {wanted:g} {unit}",
            f"cannot be met: bought parts alone take {sum(bought):g} {unit}",
            "leave something to choose, or allow more",
        )
    w = Working()
    w.given("T", wanted, unit, meaning="wanted ±")
    fixed, free = (_named(w, sign, values, unit) for sign, values in (("b", bought), ("t", chosen)))
    worst = (wanted - sum(bought)) / sum(chosen)
    w.step(
        "P_worst",
        f"(T − ({' + '.join(fixed) or '0'}))/({' + '.join(free)})",
        worst,
        "",
        meaning="chosen tolerances times this, at the worst",
        answer="worst",
    )
    squares = [" + ".join(f"{name}²" for name in names) or "0" for names in (fixed, free)]
    root = sqrt((wanted**2 - _squared(bought)) / _squared(chosen))
    w.step(
        "P_rss",
        f"√((T² − ({squares[0]}))/({squares[1]}))",
        root,
        "",
        meaning="times this, as root of squares",
        answer="likely",
    )
    return Worked(Scale(worst, root), w)


def _named(w: Working, sign: str, values: Sequence[Length], unit: str) -> list[str]:
    names = [f"{sign}_{i}" for i in range(1, len(values) + 1)]
    for name, value in zip(names, values, strict=True):
        w.given(name, value, unit)
    return names


def _squared(values: Sequence[Length]) -> float:
    return sum(value**2 for value in values)
