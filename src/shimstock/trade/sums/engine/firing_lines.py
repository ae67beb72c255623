from math import cos, hypot, radians, sin
from typing import Annotated

from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import EXHAUST, RUNNING
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._cycle import Cycle, turns_between
from shimstock.trade.sums.engine._firings import Firings, in_order, keep

LINES = 8
ROUNDING = 1e-13  # below this a sum of sines is only what rounding leaves
HEARD = 0.05  # share of all firings together below which a line is as good as missing


@a_sum(example="--firings '0, 180' --speed '975 rpm'", cautions=(RUNNING, EXHAUST))
def firing_lines(
    *,
    firings: Firings,
    speed: Annotated[float, Of("rpm", above=0, found="rated speed")],
    cycle: Cycle = "four-stroke",
) -> Worked[list[float]]:
    """Which tones an engine's firings make, and how strong: for reading its speed from its sound.

    The strength is in single firings: 2 for a twin is as strong as both together. An uneven twin
    has no tone at all where an even one has its strongest. Only lines that can be heard get a tone.

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
    i = turns_between(w, cycle)
    rate = w.step("f", "n/(60·i)", speed / (60 * i), "per.s", meaning="cycles a second")
    strengths = [_line(w, angles, k, i) for k in range(1, LINES + 1)]
    for k, strength in enumerate(strengths, 1):
        if strength > HEARD * len(angles):
            w.step(f"f_{k}", f"{k}·f", k * rate, "per.s", answer=f"tone {k}")
        elif k == len(angles):
            w.note(f"The rate of all firings together, line {k}, is silent in an engine like this.")
    return Worked(strengths, w)


def _line(w: Working, angles: list[float], k: int, turns: int) -> float:
    """Strength of the tone at k times the rate of the cycle; what is only rounding is nothing."""
    turned = [radians(k * angle / turns) for angle in angles]
    sums = {}
    for name, part in (("cos", cos), ("sin", sin)):
        shown = " + ".join(f"{name}({k}·φ_{j}/i)" for j in range(1, len(angles) + 1))
        together = sum(map(part, turned))
        together = 0.0 if abs(together) < ROUNDING else together
        sums[name] = w.step(f"{name[0]}_{k}", shown, together, "")
    strength = hypot(sums["cos"], sums["sin"])
    return w.step(f"a_{k}", f"√(c_{k}² + s_{k}²)", strength, "", answer=f"strength {k}")
