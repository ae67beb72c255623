"""Sums found by words, as one types them: those that are called so first, then those that speak."""

from functools import cache

from shimstock.trade.sums.declare import Sum
from shimstock.trade.sums.find import all_sums


def by_words(typed: str) -> dict[str, list[Sum]]:
    """The sums by family in which each word occurs; all of them where nothing is typed.

    A sum whose name has all the words is found alone with the like; otherwise its sentence, family,
    remarks and inputs are looked through.

    >>> [each.name for each in by_words("train ratio")["gears"]]
    ['train-ratio']
    """
    words = typed.lower().replace("-", " ").split()
    for texts in (_names(), _all_said()):
        found = {
            family: [each for each in sums if all(word in texts[each.name] for word in words)]
            for family, sums in all_sums().items()
        }
        if any(found.values()):
            return {family: sums for family, sums in found.items() if sums}
    return {}


@cache
def _names() -> dict[str, str]:
    return {each.name: each.name.replace("-", " ") for sums in all_sums().values() for each in sums}


@cache
def _all_said() -> dict[str, str]:
    return {each.name: _said(family, each) for family, sums in all_sums().items() for each in sums}


def _said(family: str, sum_: Sum) -> str:
    inputs = " ".join(f"{one.words} {one.meaning}" for one in sum_.inputs)
    parts = (sum_.name, family, sum_.sentence, sum_.remarks, inputs)
    return " ".join(parts).lower().replace("-", " ")
