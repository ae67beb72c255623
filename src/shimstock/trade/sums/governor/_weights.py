"""What all flyweight governors share."""

from math import pi
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

G = 9.80665
Length = Annotated[float, Of("mm", above=0)]
Mass = Annotated[float, Of("kg", above=0)]
Speed = Annotated[float, Of("rpm", above=0)]


def turning(w: Working, mark: str, speed: float, meaning: str) -> float:
    """Speed of turning in rad/s, kept as ω with the mark; the speed itself as n."""
    w.given(f"n{mark}", speed, "rpm", meaning=meaning)
    return w.step(f"ω{mark}", f"2·π·n{mark}/60", 2 * pi * speed / 60, "rad/s")


def pull(w: Working, mark: str, mass: float, omega: float, radius: float) -> float:
    """Pull outwards of one ball in N, kept as F; m and r stand in the working, r in mm."""
    force = mass * omega**2 * radius / 1000
    shown = f"m·ω{mark}²·r{mark}/1000"
    return w.step(f"F{mark}", shown, force, "N", meaning="pull of one ball outwards")


def within_swing(what: str, travel: float, arm: str, length: float) -> None:
    """Raises NotPossible where the end of an arm would travel further than the arm can swing."""
    if abs(travel) >= 2 * length:
        rule = f"would move the {arm}, {length:g} mm, further than it can swing"
        raise NotPossible(f"{what}, {travel:g} mm apart,", rule, "look at the units")


def larger(what: str, value: float, than: str, other: float, unit: str) -> None:
    """Raises NotPossible where a value is not larger than another."""
    if value <= other:
        rule = f"must be larger than {than}, {other:g} {unit}"
        raise NotPossible(f"{what} {value:g} {unit}", rule, "look whether the two are swapped")
