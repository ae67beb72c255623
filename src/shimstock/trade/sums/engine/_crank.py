"""The slider-crank: where the piston stands at a crank angle, and how fast it goes."""

from math import cos, radians, sin, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.sums.declare import Of

Stroke = Annotated[float, Of("mm", above=0, most=1000, found="stroke")]
Rod = Annotated[float, Of("mm", above=0, most=3000, found="rod length")]
Speed = Annotated[float, Of("rpm", least=0, found="rated speed")]


def check_rod(stroke: float, rod: float) -> None:
    """Raises NotPossible where the rod could not clear the crank."""
    if rod <= stroke / 2:
        raise NotPossible(
            f"rod {rod:g} mm",
            f"must be longer than the crank's throw, {stroke / 2:g} mm",
            "look whether stroke and rod are swapped; a rod is mostly near twice the stroke",
        )


def drop(throw: float, rod: float, angle: float) -> float:
    """How far the piston is below top dead centre, in the unit of the lengths; angle in deg."""
    turned = radians(angle)
    return throw * (1 - cos(turned)) + rod - sqrt(rod**2 - (throw * sin(turned)) ** 2)
