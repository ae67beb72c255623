"""One unit turned into another of its kind, exactly: 146.05 mm is 5.75 in to the last digit."""

from fractions import Fraction
from functools import lru_cache
from typing import Any

from shimstock.trade.numbers.unit_names import Unit, unit

# Millimetres by definition (1 in = 25.4 mm). Typed all day long, and waking Pint takes longer than
# a person at a terminal should wait; every other unit is Pint's.
EVERYDAY_MM = {"mm": Fraction(1), "inch": Fraction("25.4"), "thou": Fraction("0.0254")}
SAID_FOR_FORCE = {"lb": "lbf", "kg": "kgf"}


def kind(name: str) -> str:
    """What a unit measures: "length", "pressure" and so on; KeyError where it is unknown.

    >>> kind("thou"), kind("ft-lb")
    ('length', 'torque')
    """
    return unit(name).kind


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """The same quantity in another unit of its kind.

    Raises ValueError where the two measure different things, KeyError for an unknown unit.

    >>> convert(146.05, "mm", "in"), convert(160, "degF", "degC")
    (5.75, 71.11111111111111)
    """
    if from_unit == to_unit:
        return value
    return float(exactly(Fraction(repr(float(value))), unit(from_unit), unit(to_unit)))


def exactly(value: Fraction, have: Unit, want: Unit) -> Fraction:
    """The exact value in the wanted unit; ValueError where the kinds differ."""
    if have.name == want.name:
        return value
    if have.kind != want.kind:
        raise ValueError(
            f"{have.name} measures {have.kind}, {want.name} measures {want.kind}: "
            "one cannot become the other"
        )
    offset, factor = _straight_line(have.pint, want.pint)
    return offset + factor * value


@lru_cache(maxsize=512)
def _straight_line(have: str, want: str) -> tuple[Fraction, Fraction]:
    """How the wanted unit follows from the other: offset + factor · value."""
    if have in EVERYDAY_MM and want in EVERYDAY_MM:
        return Fraction(0), EVERYDAY_MM[have] / EVERYDAY_MM[want]
    registry = _registry()
    at_zero, at_one = (
        Fraction(registry.Quantity(Fraction(at), have).to(want).magnitude) for at in (0, 1)
    )
    return at_zero, at_one - at_zero


@lru_cache(maxsize=1)
def _registry() -> Any:
    """Pint's units in exact fractions, imported only when something less common is typed."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction, autoconvert_offset_to_baseunit=True)
