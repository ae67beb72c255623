from math import cos, radians, sin
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import SLING
from shimstock.trade.sums.declare import Of, a_sum

MOST_INCLUDED = 120.0  # degrees between the legs; beyond it no sling is used


@a_sum(example="--load '500 lb' --legs 2 --angle 60", cautions=(SLING,))
def sling_tension(
    *,
    load: Annotated[float, Of("kg", above=0)],
    legs: Annotated[int, Of("", least=1, most=4)] = 2,
    angle: Annotated[float, Of("deg", above=0, most=90)] | None = None,
    included: Annotated[float, Of("deg", least=0, below=180)] | None = None,
) -> Worked[float]:
    """Pull in each leg of a sling by its angle, from the level or between the legs.

    Of more than two legs only two are counted on, for a stiff load hangs in two.

    load: hung from the hook, in kg.
    legs: how many there are, a count.
    angle: of a leg from the level, in deg.
    included: between two legs opposite each other, in deg.
    Raises NotPossible where not exactly one angle is given, the legs spread beyond 120 degrees, or
    one leg alone leans.
    Source: sling maker's chart, 1/sin of the angle from the level; a plant operators' reference
    page, 1/cos of half the angle between the legs, not above 120 degrees.

    >>> round(sling_tension(load=1000, angle=30).value)
    1000
    """
    if (angle is None) == (included is None):
        rule = "from the level or between the legs: exactly one is wanted"
        raise NotPossible("the angle", rule, "type --angle or --included")
    w = Working()
    w.given("W", load, "kg", meaning="load")
    counted = w.given("z", min(legs, 2), "", meaning="legs counted on")
    if included is not None:
        spread = included
        factor = 1 / cos(radians(included / 2))
        w.given("β", included, "deg", meaning="between the legs")
        w.step("k", "1/cos(β/2)", factor, "", meaning="pull for each share", answer="factor")
    else:
        level = 90.0 if angle is None else angle
        spread = 180 - 2 * level
        factor = 1 / sin(radians(level))
        w.given("α", level, "deg", meaning="from the level")
        w.step("k", "1/sin(α)", factor, "", meaning="pull for each share", answer="factor")
    if spread > MOST_INCLUDED:
        rule = f"spread {spread:g} deg, above {MOST_INCLUDED:g}"
        raise NotPossible("the legs", rule, "take longer slings or a spreader beam")
    if legs == 1 and spread > 0:
        raise NotPossible("one leg alone", "hangs straight", "type --angle 90, or --legs 2")
    w.step("q", "1/k", 1 / factor, "", meaning="of the upright rating", answer="rating share")
    pull = load / counted * factor
    w.step("T", "W/z·k", pull, "kg", meaning="in each leg", answer="each leg")
    return Worked(pull, w)
