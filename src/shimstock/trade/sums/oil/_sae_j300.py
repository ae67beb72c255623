"""SAE J300, engine oils: limits of each grade, editions of December 1999 and January 2015."""

from typing import NamedTuple


class Grade(NamedTuple):
    """A grade by its viscosity at 100 °C in mm²/s: from least up to, not with, below."""

    name: str
    least: float
    below: float


class Winter(NamedTuple):
    """A winter grade: least mm²/s at 100 °C, most cP in cranking and at how many °C.

    The pumping test is made 5 °C colder, and allows the same to all grades.
    """

    name: str
    least: float
    cranking: float
    cranking_at: float


PUMPING = 60_000  # cP
THICK = (
    Grade("30", 9.3, 12.5),
    Grade("40", 12.5, 16.3),
    Grade("50", 16.3, 21.9),
    Grade("60", 21.9, 26.1),
)
SUMMER: dict[str, tuple[Grade, ...]] = {
    "1999": (Grade("20", 5.6, 9.3), *THICK),
    "2015": (
        # 8 to 16 overlap one another and 20; an oil is sold as the one its maker names.
        Grade("8", 4.0, 6.1),
        Grade("12", 5.0, 7.1),
        Grade("16", 6.1, 8.2),
        Grade("20", 6.9, 9.3),
        *THICK,
    ),
}
WINTER = (
    Winter("0W", 3.8, 6200, -35),
    Winter("5W", 3.8, 6600, -30),
    Winter("10W", 4.1, 7000, -25),
    Winter("15W", 5.6, 7000, -20),
    Winter("20W", 5.6, 9500, -15),
    Winter("25W", 9.3, 13000, -10),
)
