import re
from dataclasses import dataclass

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse

EXAMPLE = "14/8, 10/6"


@dataclass(frozen=True)
class Pair:
    """Diameters of a driving and a driven pulley, in one unit."""

    driving: float
    driven: float

    def __str__(self) -> str:
        return f"{self.driving:g}/{self.driven:g}"


def read_pairs(typed: str) -> list[Pair]:
    """Pairs of pulleys in order, each as driving / driven. Raises NotUnderstood.

    >>> [str(pair) for pair in read_pairs("14/8, 10/6")]
    ['14/8', '10/6']
    """
    pairs = [part.split("/") for part in re.split(r"[,;]", typed) if part.strip()]
    if not pairs or any(len(pair) != 2 for pair in pairs) or len(pairs) > 6:
        wrong = "is no row of pulleys, driving diameter / driven diameter"
        raise NotUnderstood(typed, wrong, (EXAMPLE,))
    read = [[parse(end, unit="count", what="diameter").value for end in pair] for pair in pairs]
    if any(end <= 0 for pair in read for end in pair):
        raise NotUnderstood(typed, "has a pulley without a diameter", (EXAMPLE,))
    return [Pair(driving, driven) for driving, driven in read]
