"""Width and height of a key in a working: as typed, else by the table."""

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.keys._b17_1 import KEYS, SMALLEST, Form, Key, inches, key_of


def table_key(shaft: float) -> Key:
    """The key of the table for a shaft. Raises NotPossible where it holds none."""
    key = key_of(shaft)
    if key is None:
        rule = f"is not held here: over {SMALLEST:g} and up to {KEYS[-1].to:g} in"
        raise NotPossible(f"shaft {shaft:g} in", rule, "measure the key seat and type its size")
    return key


def height_of(key: Key, form: Form, shaft: float) -> str:
    """Height of the key as a fraction. Raises NotPossible where it is made square only."""
    if form == "rectangular" and not key.flat:
        raise NotPossible(f"shaft {shaft:g} in", "has a square key only", "take the square key")
    return key.width if form == "square" else key.flat


def key_lines(
    w: Working, shaft: float, width: float | None, height: float | None, form: Form
) -> tuple[float, float]:
    """W and H as typed, else of the table for the shaft; a typed width alone means square."""
    if width is None:
        key = table_key(shaft)
        w.note(f"ANSI B17.1 for a shaft of {shaft:g} in, {form}.")
        width = inches(key.width)
        height = inches(height_of(key, form, shaft)) if height is None else height
    w.given("W", width, "in", meaning="width of the key")
    height = width if height is None else height
    w.given("H", height, "in", meaning="height of the key")
    if width >= shaft or height >= shaft:
        rule = f"must be smaller than the shaft, {shaft:g} in"
        raise NotPossible(f"a key of {width:g} × {height:g} in", rule, "look at the units")
    return width, height
