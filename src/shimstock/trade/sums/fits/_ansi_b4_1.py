"""The rows of ANSI B4.1 that are held here; limits in thousandths of an inch from nominal."""

from typing import Literal, NamedTuple

FitClass = Literal["FN 1", "FN 2", "RC 2", "RC 4"]


class Row(NamedTuple):
    """Sizes over and up to, in in; upper and lower deviation of hole and shaft, in thou."""

    over: float
    to: float
    hole: tuple[float, float]
    shaft: tuple[float, float]


# Read in a printed copy of the tables, Machinery's Handbook, 27th edition, page 663 and on.
ROWS: dict[str, tuple[Row, ...]] = {
    "FN 1": (Row(1.58, 1.97, (0.6, 0), (1.4, 1.0)),),
    "FN 2": (
        Row(0.95, 1.19, (0.8, 0), (1.9, 1.4)),
        Row(1.19, 1.97, (1.0, 0), (2.4, 1.8)),
        Row(1.97, 2.56, (1.2, 0), (2.7, 2.0)),
        Row(2.56, 3.15, (1.2, 0), (2.9, 2.2)),
        Row(3.15, 3.94, (1.4, 0), (3.7, 2.8)),
    ),
    "RC 2": (Row(1.19, 1.97, (0.6, 0), (-0.4, -0.8)),),
    "RC 4": (
        Row(0.71, 1.19, (1.2, 0), (-0.8, -1.6)),
        Row(1.19, 1.97, (1.6, 0), (-1.0, -2.0)),
    ),
}
MEANS = {
    "FN 1": "light drive fit",
    "FN 2": "medium drive fit, like H7/s6",
    "RC 2": "sliding fit, like H6/g5",
    "RC 4": "close running fit, like H8/f7",
}


def held(fit_class: str) -> str:
    """The sizes held for a class, in words."""
    rows = ROWS[fit_class]
    return f"over {rows[0].over:g} and up to {rows[-1].to:g} in"


def row_of(fit_class: str, size: float) -> Row | None:
    """The row for a size in in; None where it is not held here."""
    return next((row for row in ROWS[fit_class] if row.over < size <= row.to), None)
