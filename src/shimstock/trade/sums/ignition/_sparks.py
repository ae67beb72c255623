"""How often sparks come."""

from typing import Annotated, Literal

from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.declare import Of

Cycle = Literal["four-stroke", "two-stroke"]
Cylinders = Annotated[int, Of("", least=1, most=16, found="cylinders")]
Speed = Annotated[float, Of("rpm", above=0, found="rated speed")]


def sparks_a_second(w: Working, speed: float, cylinders: int, cycle: Cycle) -> float:
    """Sparks a second of the whole engine, kept as f."""
    w.given("n", speed, "rpm", meaning="speed of the crankshaft")
    w.given("z", cylinders, "", meaning="cylinders")
    i = w.given(
        "i",
        2 if cycle == "four-stroke" else 1,
        "",
        meaning=f"turns between sparks of one cylinder, {cycle}",
    )
    rate = speed * cylinders / (60 * i)
    return w.step("f", "n·z/(60·i)", rate, "per.s", meaning="sparks", answer="sparks")
