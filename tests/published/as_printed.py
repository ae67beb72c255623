"""A published value kept as its text: its last digit says how close a computed value must come."""

from decimal import Decimal


class AsPrinted:
    """Equal to every number that would have been printed so: within half of the last digit.

    >>> 57.98889 == AsPrinted("58.0"), 58.06 == AsPrinted("58.0")
    (True, False)
    """

    def __init__(self, text: str) -> None:
        number = Decimal(text.replace("−", "-").replace("_", "").replace(" ", ""))
        exponent = number.as_tuple().exponent
        if not isinstance(exponent, int):
            raise ValueError(f"{text} is no printed number")
        self.text = text
        self.number = number
        self.half = Decimal(5).scaleb(exponent - 1)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, int | float):
            return NotImplemented
        return abs(Decimal(float(other)) - self.number) <= self.half

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        return f"{self.text} as printed"


def as_printed(text: str) -> AsPrinted:
    """The value that a source prints, to be compared with ==."""
    return AsPrinted(text)
