"""Fuel through the holes of an injector."""

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of
from shimstock.trade.sums.injection._fuel import higher

Coefficient = Annotated[float, Of("", above=0, most=1)]
Degrees = Annotated[float, Of("deg", above=0, below=360)]
Holes = Annotated[int, Of("", least=1)]


@dataclass(frozen=True)
class Pressures:
    """Of the fuel and of the cylinder in bar, at the start and, where it changes, at the end."""

    fuel: float
    cylinder: float
    end_fuel: float | None = None
    end_cylinder: float | None = None


def jet(w: Working, at: Pressures, density: float, coefficient: float) -> float:
    """Speed of the jet in m/s, kept as v.

    Raises NotPossible where a cylinder's pressure is not below the fuel's, or an end is half given.
    """
    drop = _drop(w, at)
    w.given("ρ", density, "g/cc", meaning="density of the fuel")
    w.given("C", coefficient, "", meaning="coefficient of the hole")
    speed = coefficient * sqrt(200 * drop / density)
    shown = "C·√(2·Δp·100000/(ρ·1000))"
    return w.step("v", shown, speed, "m/s", meaning="speed of the jet", answer="speed")


def _drop(w: Working, at: Pressures) -> float:
    higher("pressure", at.fuel, "the cylinder's", at.cylinder)
    w.given("p_1", at.fuel, "bar", meaning="fuel pressure")
    w.given("p_c1", at.cylinder, "bar", meaning="pressure in the cylinder")
    if at.end_fuel is None and at.end_cylinder is None:
        drop = at.fuel - at.cylinder
        return w.step("Δp", "p_1 − p_c1", drop, "bar", meaning="that drives the fuel")
    if at.end_fuel is None or at.end_cylinder is None:
        rule = "need each other"
        raise NotPossible("end pressure and end against", rule, "give both, or leave both out")
    higher("end pressure", at.end_fuel, "the cylinder's then", at.end_cylinder)
    w.given("p_2", at.end_fuel, "bar", meaning="fuel pressure at the end")
    w.given("p_c2", at.end_cylinder, "bar", meaning="pressure in the cylinder at the end")
    drop = (at.fuel - at.cylinder + at.end_fuel - at.end_cylinder) / 2
    shown = "(p_1 − p_c1 + p_2 − p_c2)/2"
    return w.step("Δp", shown, drop, "bar", meaning="that drives the fuel, in the mean")


def open_for(w: Working, degrees: float, speed: float) -> float:
    """Time in ms that the injector is open, kept as t."""
    w.given("θ", degrees, "deg", meaning="crank degrees of injection")
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    time = 1000 * degrees / (6 * speed)
    return w.step("t", "1000·θ/(6·n)", time, "ms", meaning="injector open", answer="time")
