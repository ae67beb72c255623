"""Keys of ANSI B17.1 by the diameter of the shaft, in in."""

from typing import Literal, NamedTuple

Form = Literal["square", "rectangular"]


class Key(NamedTuple):
    """A key for shafts up to a diameter: width, height where it is rectangular, and its name."""

    to: float
    width: str
    flat: str


SMALLEST = 5 / 16
# Shaft over the row before and up to this; width of the square key as read in a printed table,
# height of the rectangular key from memory of the standard.
KEYS: tuple[Key, ...] = (
    Key(7 / 16, "3/32", ""),
    Key(9 / 16, "1/8", "3/32"),
    Key(7 / 8, "3/16", "1/8"),
    Key(1.25, "1/4", "3/16"),
    Key(1.375, "5/16", "1/4"),
    Key(1.75, "3/8", "1/4"),
    Key(2.25, "1/2", "3/8"),
    Key(2.75, "5/8", "7/16"),
    Key(3.25, "3/4", "1/2"),
    Key(3.75, "7/8", "5/8"),
    Key(4.5, "1", "3/4"),
)


def key_of(shaft: float) -> Key | None:
    """The key for a shaft; None where the table has none.

    >>> key_of(1.5).width
    '3/8'
    """
    if shaft <= SMALLEST:
        return None
    return next((key for key in KEYS if shaft <= key.to), None)


def inches(text: str) -> float:
    """A fraction as a number.

    >>> inches("3/32")
    0.09375
    """
    top, _, bottom = text.partition("/")
    return int(top) / int(bottom or 1)
