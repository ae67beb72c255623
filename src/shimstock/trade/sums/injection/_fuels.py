"""Figures of fuels, and of the fluid that injection pumps are set with."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Range:
    """A figure of a fuel: its symbol and unit, least and most, and a share allowed beyond them."""

    symbol: str
    unit: str
    least: float
    most: float
    beyond: float = 0.0

    def outside(self, value: float) -> list[str]:
        """On which side of the range a value lies, where it lies outside."""
        low, high = self.least * (1 - self.beyond), self.most * (1 + self.beyond)
        return [word for word, out in (("below", value < low), ("above", value > high)) if out]


def _density(least: float, most: float) -> Range:
    return Range("ρ", "g/cc", least, most)


def _heat(least: float, most: float) -> Range:
    return Range("H", "MJ/kg", least, most, 0.02)


# The tables give one heating value where least and most are alike; blends differ by 2 %.
FUELS: dict[str, dict[str, Range]] = {
    "diesel": {"density": _density(0.82, 0.86), "heating value": _heat(42.5, 43.2)},
    "petrol": {"density": _density(0.72, 0.775), "heating value": _heat(44.0, 44.0)},
    "kerosene": {"density": _density(0.775, 0.84), "heating value": _heat(43.1, 43.1)},
    "calibration fluid": {
        "density": _density(0.82, 0.83),
        "viscosity": Range("ν", "mm2/s", 2.45, 2.75),
    },
}
