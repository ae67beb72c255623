"""What all sums of injection share: the fuel, its cycle, and how it is squeezed."""

from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

# Lighter than any motor fuel or heavier than water is a slip of the units.
Density = Annotated[float, Of("g/cc", least=0.4, most=1.1)]
Pressure = Annotated[float, Of("bar", least=0)]
Delivery = Annotated[float, Of("mm3", above=0)]
Speed = Annotated[float, Of("rpm", above=0, found="rated speed")]
Cylinders = Annotated[int, Of("", least=1, found="cylinders")]
Cycle = Literal["four-stroke", "two-stroke"]
Squeeze = Annotated[float, Of("per.bar", above=0)]
Modulus = Annotated[float, Of("MPa", above=0)]

DIESEL = 0.84  # g/cc at 15 °C, the middle of what is sold
ONE_BAR = 1.0  # what stands in the pump before the plunger rises, about the air's


def turns(w: Working, cycle: Cycle) -> int:
    """Turns of the crank for each injection of a cylinder, kept as i."""
    i = 2 if cycle == "four-stroke" else 1
    w.given("i", i, "", meaning=f"turns for each injection, {cycle}")
    return i


def squeezed(w: Working, squeeze: float | None, modulus: float | None) -> float:
    """Share by which the fuel shrinks for each bar, kept as β.

    Raises NotPossible where it is not given once, as squeeze or as modulus.
    """
    if squeeze is not None and modulus is not None:
        raise NotPossible("squeeze and modulus", "say the same thing", "leave one out")
    if squeeze is not None:
        return w.given("β", squeeze, "per.bar", meaning="share that the fuel shrinks for a bar")
    if modulus is None:
        raise NotPossible("squeeze", "is missing, and modulus too", "give one of the two")
    w.given("K", modulus, "MPa", meaning="bulk modulus of the fuel")
    return w.step("β", "1/(10·K)", 1 / (10 * modulus), "per.bar", meaning="shrinks for a bar")


def stiffness(w: Working, squeeze: float | None, modulus: float | None) -> float:
    """Bulk modulus of the fuel in MPa, kept as K.

    Raises NotPossible where it is not given once, as squeeze or as modulus.
    """
    if modulus is not None and squeeze is None:
        return w.given("K", modulus, "MPa", meaning="bulk modulus of the fuel")
    beta = squeezed(w, squeeze, modulus)
    return w.step("K", "1/(10·β)", 1 / (10 * beta), "MPa", meaning="bulk modulus of the fuel")


def shrunk(w: Working, volume: float, beta: float, pressure: float, start: float) -> float:
    """How much a volume V in cc shrinks, in mm3, kept as ΔV.

    Raises NotPossible where the pressure does not rise, or would press the fuel to nothing.
    """
    higher("pressure", pressure, "what it starts from", start)
    if beta * (pressure - start) >= 1:
        rule = "would press the fuel to nothing"
        raise NotPossible(f"pressure {pressure:g} bar", rule, "look at squeeze and units")
    w.given("p", pressure, "bar", meaning="pressure")
    w.given("p_0", start, "bar", meaning="pressure before")
    less = 1000 * volume * beta * (pressure - start)
    return w.step("ΔV", "1000·V·β·(p − p_0)", less, "mm3", meaning="lost to squeezing",
                  answer="squeezed")  # fmt: skip


def higher(what: str, pressure: float, than: str, other: float) -> None:
    """Raises NotPossible where a pressure in bar is not above another."""
    if pressure <= other:
        rule = f"must be above {than}, {other:g} bar"
        raise NotPossible(f"{what} {pressure:g} bar", rule, "look whether the two are swapped")
