from math import cos, hypot, radians, sin
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle
from shimstock.trade.sums.engine._firings import Firings, in_order, keep

LINES = 8
HEARD = 0.05  # share of all firings together below which a line is as good as missing


@a_sum(example="--firings '0, 180' --speed '975 rpm'")
def firing_lines(
    *,
    firings: Firings,
    speed: Annotated[float, Of("rpm", above=0, found="rated speed")],
    cycle: Cycle = "four-stroke",
) -> Worked[list[float]]:
    """Which tones an engine's firings make, and how strong: for reading its speed from its sound.

    The strength is in single firings: 2 for a twin is as strong as both together. An uneven twin
    has no tone at all where an even one has its strongest.

    firings: crank angle of each cylinder's firing in one cycle, the first at 0, in deg.
    speed: of the crankshaft, in rpm.
    cycle: four-stroke or two-stroke, no unit.
    Raises NotPossible where an angle lies outside the cycle or stands twice.
    Source: Fourier series of equal impulses, |Σ e^(−j·k·φ)| at k times the rate of the cycle.

    >>> [round(s, 3) for s in firing_lines(firings=[0, 180], speed=975).value[:4]]
    [1.414, 0.0, 1.414, 2.0]
    """
    whole = 720.0 if cycle == "four-stroke" else 360.0
    angles = in_order(firings, whole)
    w = Working()
    keep(w, angles)
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    c = w.given("c", whole, "deg", meaning=f"cycle, {cycle}")
    rate = w.step("f", "n/60·360/c", speed / 60 * 360 / c, "per.s", meaning="cycles a second")
    strengths = [_line(w, angles, k, c) for k in range(1, LINES + 1)]
    lines = [k for k, s in enumerate(strengths, 1) if s > HEARD * len(angles)]
    w.tell("tones", ", ".join(f"{k * rate:.2f} a second" for k in lines) or "none of the first 8")
    return Worked(strengths, w)


def _line(w: Working, angles: list[float], k: int, cycle: float) -> float:
    """Strength of the tone at k times the rate of the cycle."""
    turned = [radians(k * 360 / cycle * angle) for angle in angles]
    names = [f"ψ_{k}{chr(96 + i)}" for i in range(1, len(angles) + 1)]
    for i, (name, angle) in enumerate(zip(names, angles, strict=True), 1):
        w.step(name, f"{k}·φ_{i}·360/c", k * angle * 360 / cycle, "deg")
    a, b = sum(map(cos, turned)), sum(map(sin, turned))
    w.step(f"a_{k}", " + ".join(f"cos({name})" for name in names), a, "")
    w.step(f"b_{k}", " + ".join(f"sin({name})" for name in names), b, "")
    strength = hypot(a, b)
    return w.step(f"s_{k}", f"√(a_{k}² + b_{k}²)", strength, "", answer=f"strength {k}")
