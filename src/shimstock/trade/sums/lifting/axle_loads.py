from dataclasses import dataclass
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.cautions import JACK, ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@dataclass(frozen=True)
class Axles:
    """Load on the front and the rear axle, both wheels together, in kg."""

    front: float
    rear: float


@a_sum(
    example="--weight '3400 lb' --wheelbase '85 in' --behind '52 in' --load '500 lb' "
    "--load-behind '110 in'",
    cautions=(ROLLOVER, JACK),
)
def axle_loads(
    *,
    weight: Annotated[float, Of("kg", above=0, found="weight")],
    wheelbase: Annotated[float, Of("mm", above=0, found="wheelbase")],
    behind: Annotated[float, Of("mm")],
    load: Annotated[float, Of("kg", least=0)] | None = None,
    load_behind: Annotated[float, Of("mm")] | None = None,
) -> Worked[Axles]:
    """Load on each axle from the weight, where it acts, and a load hung anywhere.

    weight: of the machine, in kg.
    wheelbase: front axle to rear axle, in mm.
    behind: centre of gravity behind the front axle, in mm.
    load: hung or carried, in kg.
    load_behind: the load behind the front axle, in mm; negative where it is before it.
    Raises NotPossible where an axle would lift off the ground, or the load lacks its place.
    Source: statics, moments about an axle; Beer and Johnston, Statics, chapter 4.

    >>> got = axle_loads(weight=2100, wheelbase=60, behind=40, load=900, load_behind=-50).value
    >>> round(got.rear, 6), round(got.front, 6)
    (650.0, 2350.0)
    """
    goes_with("load", load, "load behind", load_behind)
    goes_with("load behind", load_behind, "load", load)
    load, load_behind = load or 0.0, load_behind or 0.0
    w = Working()
    w.given("W", weight, "kg", meaning="weight of the machine")
    w.given("L", wheelbase, "mm", meaning="wheelbase")
    w.given("x", behind, "mm", meaning="centre of gravity behind the front axle")
    w.given("P", load, "kg", meaning="load")
    w.given("x_P", load_behind, "mm", meaning="load behind the front axle")
    rear = (weight * behind + load * load_behind) / wheelbase
    front = weight + load - rear
    for name, on in (("front", front), ("rear", rear)):
        if on < 0:
            rule = "would lift off: it would have to pull the machine down"
            raise NotPossible(f"the {name} axle", rule, "move the load in, or add ballast")
    w.step("R_r", "(W·x + P·x_P)/L", rear, "kg", meaning="both rear wheels", answer="rear")
    w.step("R_f", "W + P − R_r", front, "kg", meaning="both front wheels", answer="front")
    w.step("R_1", "R_r/2", rear / 2, "kg", meaning="on level ground", answer="one rear wheel")
    w.step("R_2", "R_f/2", front / 2, "kg", meaning="on level ground", answer="one front wheel")
    return Worked(Axles(front, rear), w)
