"""The long shoe hinged at one end: what each unit of lining pressure does.

Pressure on the lining grows with the sine of the angle from the hinge. Everything here is for one
unit of the largest pressure, so that either the pressure or the force may be what is known.
"""

from dataclasses import dataclass
from math import cos, hypot, pi, radians, sin
from typing import Annotated, Literal

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Friction = Annotated[float, Of("", least=0.01, most=2, known=(0.1, 0.6))]
Angle = Annotated[float, Of("deg", least=0, most=180)]
Length = Annotated[float, Of("length", above=0)]
Turning = Literal["leading", "trailing"]
SHORTEST = 1.0  # degrees; below it no figure of this theory means anything
LOCKED = (
    "grips by itself: the friction moment is not below the moment of the pressure",
    "see self-locking-shoe; move the hinge or take a lining with less friction",
)


@dataclass(frozen=True)
class Shoe:
    """A shoe as it is measured: lengths in one unit, angles in degrees from the hinge."""

    friction: float
    width: float
    radius: float
    pivot: float
    start: float
    end: float


@dataclass(frozen=True)
class PerPressure:
    """What one unit of the largest pressure makes: an area and three volumes."""

    area: float
    friction: float
    normal: float
    torque: float


def inside(shoe: Shoe, unit: str) -> Shoe:
    """The shoe itself. Raises NotPossible where its hinge lies outside the drum."""
    if shoe.pivot >= shoe.radius:
        raise NotPossible(
            f"pivot {shoe.pivot:g} {unit}",
            f"must be less than the radius of the drum, {shoe.radius:g} {unit}",
            "look whether the two are swapped, or the radius is a diameter of something else",
        )
    return shoe


def per_pressure(w: Working, shoe: Shoe, unit: str) -> PerPressure:
    """The moments about the hinge and the torque on the drum for each unit of pressure.

    Raises NotPossible where the lining ends before it begins.
    """
    _given(w, shoe, unit)
    volume, t1, t2 = coherent(unit).volume, radians(shoe.start), radians(shoe.end)
    mu, r, a = shoe.friction, shoe.radius, shoe.pivot
    k = w.step("k", "b·r/s_a", shoe.width * r / _largest_sine(w, shoe), coherent(unit).area)
    d_c = w.step("d_c", "cos(θ_1) − cos(θ_2)", cos(t1) - cos(t2), "")
    d_s = w.step("d_s", "sin(θ_2)² − sin(θ_1)²", sin(t2) ** 2 - sin(t1) ** 2, "")
    spread = (shoe.end - shoe.start) * pi / 360 - (sin(2 * t2) - sin(2 * t1)) / 4
    n = w.step("n", "(θ_2 − θ_1)·π/360 − (sin(2·θ_2) − sin(2·θ_1))/4", spread, "")
    m_f, m_n, m_t = mu * k * (r * d_c - a / 2 * d_s), k * a * n, mu * k * r * d_c
    w.step("m_f", "μ·k·(r·d_c − a/2·d_s)", m_f, volume, meaning="friction moment a unit pressure")
    w.step("m_n", "k·a·n", m_n, volume, meaning="moment of the pressure a unit pressure")
    w.step("m_t", "μ·k·r·d_c", m_t, volume, meaning="torque on the drum a unit pressure")
    return PerPressure(k, m_f, m_n, m_t)


def closing(w: Working, per: PerPressure, turning: Turning, unit: str) -> float:
    """What the force at the toe must balance for each unit of pressure; shown once."""
    if per.friction < 0:
        w.note("The hinge lies so far out that friction works the other way: what usually presses "
               "the shoe on pushes it off here.")  # fmt: skip
    if turning == "leading":
        meaning = "the leading shoe"
        symbol, shown, value = "m_1", "m_n − m_f", per.normal - per.friction
    else:
        meaning = "the trailing shoe"
        symbol, shown, value = "m_2", "m_n + m_f", per.normal + per.friction
    return w.step(symbol, shown, value, coherent(unit).volume, meaning=meaning)


def hinge(
    w: Working, turning: Turning, *, tilt: float, outside: bool, mark: str, unit: str
) -> None:
    """The reaction on the hinge of a shoe whose pressure and force stand in the working.

    x runs from the drum's centre to the hinge, y square to it towards the shoe.
    tilt: angle of the force from y, in degrees. mark: what the shoe's symbols end in.
    """
    force, p, f = coherent(unit).force, w.value(f"p{mark}"), w.value("F")
    mu, k, half, n = w.value("μ"), w.value("k"), w.value("d_s") / 2, w.value("n")
    t = radians(tilt)
    if turning == "leading":
        x, y, minus, plus = half - mu * n, n + mu * half, "−", "+"
    else:
        x, y, minus, plus = half + mu * n, n - mu * half, "+", "−"
    name = {"": "", "_1": "leading ", "_2": "trailing "}[mark]
    shown = f"p{mark}·k·(d_s/2 {minus} μ·n) − F·sin(α)"
    r_x = w.step(f"R_x{mark}", shown, p * k * x - f * sin(t), force, answer=f"{name}hinge x")
    pressed, shown = p * k * y, f"p{mark}·k·(n {plus} μ·d_s/2)"
    r_y, shown = pressed - f * cos(t), f"{shown} − F·cos(α)"
    if outside:
        r_y, shown = f * cos(t) - pressed, f"F·cos(α) − p{mark}·k·(n {plus} μ·d_s/2)"
    w.step(f"R_y{mark}", shown, r_y, force, answer=f"{name}hinge y")
    both = f"√(R_x{mark}² + R_y{mark}²)"
    w.step(f"R{mark}", both, hypot(r_x, r_y), force, answer=f"{name}hinge")


def one_of_two(pressure: float | None, force: float | None) -> None:
    """Raises NotPossible unless exactly one of pressure and force is given."""
    if (pressure is None) == (force is None):
        said = "neither pressure nor force" if force is None else "pressure and force together"
        raise NotPossible(said, "leave the sum open or over-full", "give one of the two")


def _given(w: Working, shoe: Shoe, unit: str) -> None:
    if shoe.end - shoe.start < SHORTEST:
        raise NotPossible(
            f"end {shoe.end:g} deg",
            f"must lie at least 1 deg beyond the start, {shoe.start:g} deg",
            "measure both from the line through hinge and drum centre; are they swapped?",
        )
    w.given("μ", shoe.friction, "", meaning="friction of lining on drum")
    w.given("b", shoe.width, unit, meaning="width of the lining")
    w.given("r", shoe.radius, unit, meaning="radius of the drum")
    w.given("a", shoe.pivot, unit, meaning="from the centre of the drum to the hinge")
    w.given("θ_1", shoe.start, "deg", meaning="from the hinge to the heel of the lining")
    w.given("θ_2", shoe.end, "deg", meaning="from the hinge to the toe of the lining")


def _largest_sine(w: Working, shoe: Shoe) -> float:
    if shoe.start > 90:
        w.note("The lining begins past 90°, so its pressure is largest at its heel.")
        return w.step("s_a", "sin(θ_1)", sin(radians(shoe.start)), "")
    if shoe.end > 90:
        w.note("The lining runs past 90°, so its pressure is largest there: s_a = sin(90°) = 1.")
        return w.step("s_a", "1", 1.0, "")
    w.note("The lining ends before 90°, so its pressure is largest at its toe.")
    return w.step("s_a", "sin(θ_2)", sin(radians(shoe.end)), "")
