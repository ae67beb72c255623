"""A chance as a person reads it: in whole per cents, and never surer than it is."""

LEAST = 0.01
"""A smaller chance is said as such: nobody means more digits."""


def percent(chance: float) -> str:
    """A chance from 0 to 1 in words: never a flat 0 or 100, not even where it was rounded to one.

    >>> percent(0.347), percent(0.002), percent(0.998), percent(1.0)
    ('35 %', 'under 1 %', 'over 99 %', 'over 99 %')
    """
    return f"{_whole(chance)} %"


def percent_or_settled(chance: float) -> str:
    """A chance of which an exact 0 or 1 means that somebody settled it.

    >>> percent_or_settled(0.0), percent_or_settled(0.002), percent_or_settled(1.0)
    ('ruled out', 'under 1 %', 'certain')
    """
    if chance in (0, 1):
        return "certain" if chance else "ruled out"
    return percent(chance)


def percent_between(low: float, high: float) -> str:
    """An interval of chances.

    >>> percent_between(0.347, 0.998)
    '35 to over 99 %'
    """
    return f"{_whole(low)} to {_whole(high)} %"


def _whole(chance: float) -> str:
    if chance < LEAST:
        return "under 1"
    return "over 99" if chance > 1 - LEAST else f"{100 * chance:.0f}"
