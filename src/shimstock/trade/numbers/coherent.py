"""Units that fit together: whoever works in inches pulls in pounds and presses in psi."""

from dataclasses import dataclass

from shimstock.trade.numbers.not_possible import NotPossible


@dataclass(frozen=True)
class Coherent:
    """Units in which a formula of statics needs no factor: force is pressure times area."""

    length: str
    area: str
    volume: str
    force: str
    pressure: str
    torque: str
    rate: str


METRIC = Coherent("mm", "mm2", "mm3", "N", "MPa", "N.mm", "N/mm")
INCH = Coherent("in", "in2", "in3", "lbf", "psi", "lbf.in", "lbf/in")
WORDS = frozenset(("length", "area", "volume", "force", "pressure", "torque", "rate"))


def coherent(unit: str) -> Coherent:
    """The units that go with lengths in `unit`. Raises NotPossible where it is not mm or in.

    >>> coherent("in").pressure, coherent("mm").torque
    ('psi', 'N.mm')
    """
    if unit == "mm":
        return METRIC
    if unit == "in":
        return INCH
    raise NotPossible(f"unit {unit}", "is neither mm nor in", "name one of the two")
