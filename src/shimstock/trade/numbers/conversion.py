"""One unit turned into another of its kind, exactly: 146.05 mm is 5.75 in to the last digit."""

from fractions import Fraction

from shimstock.trade.numbers.unit_names import Unit, unit

SAID_FOR_FORCE = {"lb": "lbf", "kg": "kgf"}
SAID_FOR_WEIGHT = {"lbf": "lb", "kgf": "kg"}
SAID_FOR_WARMING = {"degC": "K", "deg": "K", "degF": "Fdeg"}


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
    return (have.zero + value * have.size - want.zero) / want.size
