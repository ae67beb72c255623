from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import parse
from shimstock.trade.numbers.units import Length

EXAMPLE = "9,34; 35,10; -13,6"


def read_points(typed: str) -> list[tuple[Length, Length]]:
    """Points as x,y parted by semicolons. Raises NotUnderstood.

    >>> read_points("9,34; 35,10")
    [(9.0, 34.0), (35.0, 10.0)]
    """
    pairs = [part.split(",") for part in typed.split(";") if part.strip()]
    if not pairs or any(len(pair) != 2 for pair in pairs):
        raise NotUnderstood(typed, "is no row of points, x,y and a semicolon", (EXAMPLE,))
    read = [[Length(parse(end, unit="count").value) for end in pair] for pair in pairs]
    return [(x, y) for x, y in read]
