"""Rows of pulleys as they are typed: driving / driven, one pair for each belt."""

import re
from dataclasses import dataclass

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.typed_number import split_number, tidy

EXAMPLE = "14/8 in, 10/6 in"
MOST_BELTS = 6


@dataclass(frozen=True)
class Pair:
    """Diameters of a driving and a driven pulley: in mm where `measured`, else in one unit."""

    driving: float
    driven: float
    measured: bool = False

    def __str__(self) -> str:
        return f"{self.driving:g}/{self.driven:g}{' mm' if self.measured else ''}"


def read_pairs(typed: str) -> list[Pair]:
    """Pairs of pulleys in order, each as driving / driven, with or without a unit.

    Raises NotUnderstood.

    >>> [str(pair) for pair in read_pairs("14/8, 10/6 in")]
    ['14/8', '254/152.4 mm']
    """
    pairs = [part.split("/") for part in re.split(r"[,;]", typed) if part.strip()]
    if not pairs or any(len(pair) != 2 for pair in pairs) or len(pairs) > MOST_BELTS:
        wrong = "is no row of pulleys, driving / driven diameter in decimals"
        raise NotUnderstood(typed, wrong, (EXAMPLE,))
    read = [_pair(*pair) for pair in pairs]
    if any(pair.driving <= 0 or pair.driven <= 0 for pair in read):
        raise NotUnderstood(typed, "has a pulley without a diameter", (EXAMPLE,))
    return read


def _pair(driving: str, driven: str) -> Pair:
    """One pair; a unit after the driven pulley is that of both."""
    unit = _unit(driven)
    if not unit and not _unit(driving):
        return Pair(_number(driving, "count"), _number(driven, "count"))
    if not _unit(driving):
        driving = f"{driving} {unit}"
    return Pair(_number(driving, "mm"), _number(driven, "mm"), measured=True)


def _unit(typed: str) -> str:
    return split_number(tidy(typed))[1].strip()


def _number(typed: str, unit: str) -> float:
    return parse(typed, unit=unit, what="diameter").value
