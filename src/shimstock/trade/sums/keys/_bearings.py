"""Boundary dimensions of deep-groove ball bearings: bore × outside × width, in mm."""

import re
from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.sums.declare import Read

SMALL_BORES = (10, 12, 15, 17)  # mm, of the bore codes 00 to 03
EXAMPLES = ("6205", "6308")


@dataclass(frozen=True)
class Bearing:
    """A bearing by its basic code: bore, outside and width, in mm."""

    code: str
    bore: float
    outside: float
    width: float

    @property
    def size(self) -> str:
        """Bore, outside and width as they are written."""
        return f"{self.bore:g} × {self.outside:g} × {self.width:g} mm"


# Outside and width for the bore codes 00, 01, 02, ... of each series. Read in a printed chart that
# agrees with ISO 15: 6000, 6004-6008, 6200, 6203-6210 and 6303; the others from memory of ISO 15.
SERIES: dict[str, tuple[tuple[float, float], ...]] = {
    "60": (
        (26, 8), (28, 8), (32, 9), (35, 10), (42, 12), (47, 12), (55, 13), (62, 14), (68, 15),
        (75, 16), (80, 16), (90, 18), (95, 18),
    ),
    "62": (
        (30, 9), (32, 10), (35, 11), (40, 12), (47, 14), (52, 15), (62, 16), (72, 17), (80, 18),
        (85, 19), (90, 20), (100, 21), (110, 22),
    ),
    "63": (
        (35, 11), (37, 12), (42, 13), (47, 14), (52, 15), (62, 17), (72, 19), (80, 21), (90, 23),
        (100, 25), (110, 27), (120, 29), (130, 31),
    ),
}  # fmt: skip


def bore_of(code: int) -> float:
    """Bore in mm of a two-figure bore code.

    >>> bore_of(3), bore_of(5)
    (17, 25)
    """
    return SMALL_BORES[code] if code < len(SMALL_BORES) else 5 * code


BEARINGS: dict[str, Bearing] = {
    f"{series}{code:02}": Bearing(f"{series}{code:02}", bore_of(code), outside, width)
    for series, sizes in SERIES.items()
    for code, (outside, width) in enumerate(sizes)
}
HELD = ", ".join(f"{series}00 to {series}{len(sizes) - 1:02}" for series, sizes in SERIES.items())
_SUFFIXES = r"(?:[ /.-]*[A-Z](?:[A-Z0-9 /.+-]*[A-Z0-9])?|[ /.-]+2(?:RS|Z)[A-Z0-9 /.+-]*)?"
BALL = re.compile(rf"(?P<basic>6\d{{3}}){_SUFFIXES}", re.ASCII)


def parse_bearing(text: str) -> Bearing:
    """Reads the code of a ball bearing; letters behind it, for seals and play, change no size.

    Raises NotUnderstood.

    >>> parse_bearing("6205-2RS").size
    '25 × 52 × 15 mm'
    """
    match = BALL.fullmatch(text.strip().upper())
    found = BEARINGS.get(match["basic"]) if match else None
    if found is None:
        raise NotUnderstood(text, f"is no bearing of this table, which holds {HELD}", EXAMPLES)
    return found


BearingText = Annotated[Bearing, Read(parse_bearing, "6205")]
