"""Forces, torques, areas, stresses and lengths that are typed with their unit.

A sum about one thread works in the units of that thread, so a bare number could mean either.
"""

from collections.abc import Callable
from math import isfinite
from typing import Annotated

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.numbers.quantity import Quantity, parse
from shimstock.trade.numbers.typed_number import split_number, tidy
from shimstock.trade.sums.declare import Read


def _reader(what: str, unit: str, other: str) -> Callable[[str], Quantity]:
    """What reads a text of one kind and keeps it in the unit that it says."""

    def read(text: str) -> Quantity:
        found = parse(text, unit=unit, what=what)
        number, said = split_number(tidy(text))
        if not said:
            would = (f"{number} {unit}", f"{number} {other}")
            raise NotUnderstood(text, "says no unit, and could be in either", would)
        if " " in found.said:  # feet and inches
            return found
        return parse(text, unit=found.said, what=what)

    return read


parse_force = _reader("this", "lbf", "N")
parse_torque = _reader("this", "lbf.ft", "N.m")
parse_area = _reader("this", "in2", "mm2")
parse_stress = _reader("this", "psi", "MPa")
parse_length = _reader("this", "in", "mm")

Force = Annotated[Quantity, Read(parse_force, "4000 lbf")]
Torque = Annotated[Quantity, Read(parse_torque, "24 lbf.ft", found="torque")]
BookTorque = Annotated[Quantity, Read(parse_torque, "24 lbf.ft", found="torque", beside=True)]
Area = Annotated[Quantity, Read(parse_area, "0.0775 in2")]
Stress = Annotated[Quantity, Read(parse_stress, "85 ksi")]
Length = Annotated[Quantity, Read(parse_length, "2 in")]


def above_nothing(what: str, amount: Quantity, unit: str) -> float:
    """The amount in `unit`. Raises NotPossible where it is not above nothing."""
    if not isfinite(amount.value):
        raise NotPossible(f"{what} {amount.value}", "is no number", "type one in figures")
    value = convert(amount.value, amount.unit, unit)
    if not value > 0:
        said = f"{value:g}".replace("-", "−")
        raise NotPossible(f"{what} {said} {unit}", "must be above 0", "look at the sign")
    return value
