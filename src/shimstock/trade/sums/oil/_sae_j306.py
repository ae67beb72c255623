"""SAE J306, gear oils: mm²/s at 100 °C of each grade, and how cold a winter grade goes."""

from math import inf

from shimstock.trade.sums.oil._sae_j300 import Grade

GRADES: dict[str, tuple[Grade, ...]] = {
    "2019": (
        Grade("80", 8.5, 11.0),
        Grade("85", 11.0, 13.5),
        Grade("90", 13.5, 18.5),
        Grade("110", 18.5, 24.0),
        Grade("140", 24.0, 32.5),
        Grade("190", 32.5, 41.0),
        Grade("250", 41.0, inf),
    ),
    "before 2005": (
        Grade("90", 13.5, 24.0),
        Grade("140", 24.0, 41.0),
        Grade("250", 41.0, inf),
    ),
}

THICK = 150_000  # cP
# The highest temperature, in °C, at which the oil may reach THICK.
WINTER: tuple[tuple[str, float], ...] = (("75W", -40), ("80W", -26), ("85W", -12))
