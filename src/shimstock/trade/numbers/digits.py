"""How many digits a printed number carries, and what those digits leave open."""

from math import floor, isfinite, log10

GIVEN = 8
STEP = 6


def places(value: float, significant: int) -> int:
    """Decimals that show `value` with `significant` digits; never rounds whole units away."""
    if value == 0 or not isfinite(value):
        return 0
    return max(0, significant - 1 - floor(log10(abs(value))))


def written(value: float, significant: int = STEP) -> str:
    """The number as a person reads it: no trailing zeros, a true minus, ∞ where it has no end.

    >>> written(57.988891), written(-0.002), written(1.15e-5), written(50000838.4)
    ('57.9889', '−0.002', '1.15e-5', '50000838')
    """
    if not isfinite(value):
        return "∞" if value > 0 else "−∞" if value < 0 else "not a number"
    if 0 < abs(value) < 1e-4 or abs(value) >= 1e12:
        mantissa, exponent = f"{value:.{significant - 1}e}".split("e")
        text = f"{_trimmed(mantissa)}e{int(exponent)}"
    else:
        text = _trimmed(f"{value:.{places(value, significant)}f}")
    return text.replace("-", "−", 1) if value < 0 else text


def half_last(value: float, significant: int = STEP) -> float:
    """Half of the last digit that `written` may show: how far the print can be from the value."""
    if value == 0 or not isfinite(value):
        return 0.0
    if 0 < abs(value) < 1e-4 or abs(value) >= 1e12:
        exponent = int(f"{value:.{significant - 1}e}".split("e")[1])
        return 0.5 * float(f"1e{exponent - significant + 1}")
    return 0.5 * float(f"1e{-places(value, significant)}")


def read_back(text: str) -> float:
    """The number that `written` printed."""
    return float(text.replace("−", "-").replace("∞", "inf"))


def _trimmed(text: str) -> str:
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text
