"""A chance in the words people use."""

from fractions import Fraction

_COMMON = tuple(
    Fraction(n, d)
    for n, d in ((1, 20), (1, 10), (1, 5), (1, 4), (1, 3), (1, 2), (2, 3), (3, 4), (9, 10))
)
_NUMBERS = {
    1: "one",
    2: "two",
    3: "three",
    4: "four",
    5: "five",
    9: "nine",
    10: "ten",
    20: "twenty",
}


def in_words(chance: float) -> str:
    """A chance as so many in so many, the nearest of the usual ones.

    >>> in_words(0.474), in_words(0.69), in_words(0.004)
    ('about one in two', 'about two in three', 'less than one in forty')
    """
    if chance < 1 / 40:
        return "less than one in forty"
    if chance > 0.95:
        return "nearly certain"
    near = min(_COMMON, key=lambda each: abs(each - chance))
    return f"about {_NUMBERS[near.numerator]} in {_NUMBERS[near.denominator]}"
