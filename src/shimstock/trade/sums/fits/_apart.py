"""How far two sizes are apart, as a person would work it out."""

from shimstock.trade.numbers.audit import NOISE


def apart(a: float, b: float) -> float:
    """What a − b is; 0 where nothing but the last binary digits part them, as in 0.1 + 0.7 − 0.8.

    >>> apart(0.1 + 0.7, 0.8)
    0.0
    """
    off = a - b
    return 0.0 if abs(off) <= NOISE * max(abs(a), abs(b)) else off
