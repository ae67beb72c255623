from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.brakes._eu_2015_68 import (
    FAST,
    HAND_LIMIT,
    PEDAL_LIMIT,
    SLOW,
    SLOW_LIMIT,
)
from shimstock.trade.sums.cautions import BRAKES
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(example="--fastest '20 km/h' --distance '6.5 m' --pedal '450 N'", cautions=(BRAKES,))
def stopping_rule(
    *,
    fastest: Annotated[float, Of("km/h", above=0, most=200)],
    speed: Annotated[float, Of("km/h", above=0)] | None = None,
    distance: Annotated[float, Of("m", above=0, most=1000)] | None = None,
    pedal: Annotated[float, Of("N", above=0, most=5000)] | None = None,
    hand: Annotated[float, Of("N", above=0, most=5000)] | None = None,
) -> Worked[float]:
    """Stopping distance that EU 2015/68 allows a tractor, and whether a measured stop meets it.

    fastest: top speed that the tractor is built for, in km/h.
    speed: speed of the trial; the top speed where it is left out, in km/h.
    distance: distance measured from touching the pedal to standing still, in m.
    pedal: force on the pedal in the trial, in N.
    hand: force on the hand lever in the trial, in N.
    Raises NotPossible where the trial was faster than the tractor is built for.
    Source: Commission Delegated Regulation (EU) 2015/68, Annex II.

    >>> round(stopping_rule(fastest=30).value, 3)
    14.283
    """
    w = Working()
    w.note("EU 2015/68 is for new types; for a tractor in use the road law of the place decides.")
    w.given("v_max", fastest, "km/h", meaning="top speed")
    trial = fastest if speed is None else speed
    if trial > fastest:
        rule = f"must not be above the top speed, {fastest:g} km/h"
        raise NotPossible(f"speed {trial:g} km/h", rule, "look whether the two are swapped")
    w.given("v", trial, "km/h", meaning="speed of the trial")
    rule_ = SLOW if fastest <= SLOW_LIMIT else FAST
    w.note(rule_.words)
    allowed = w.step("s_m", f"0.15·v + v²/{rule_.divisor}", 0.15 * trial + trial**2 / rule_.divisor,
                     "m", meaning="longest stop", answer="allowed distance")  # fmt: skip
    w.step("d_m", f"{rule_.deceleration:g}", rule_.deceleration, "m/s2",
           meaning="least mean deceleration", answer="least deceleration")  # fmt: skip
    _passes(w, allowed, distance, pedal, hand)
    return Worked(allowed, w)


def _passes(
    w: Working, allowed: float, distance: float | None, pedal: float | None, hand: float | None
) -> None:
    """Says whether what was measured is within the rule; nothing where nothing was measured."""
    against: list[str] = []
    for symbol, value, unit, limit, words in (
        ("s", distance, "m", allowed, "the distance is too long"),
        ("F_p", pedal, "N", PEDAL_LIMIT, f"the pedal took more than {PEDAL_LIMIT} N"),
        ("F_h", hand, "N", HAND_LIMIT, f"the hand lever took more than {HAND_LIMIT} N"),
    ):
        if value is not None:
            w.given(symbol, value, unit, meaning="measured")
            against += [words] if value > limit else []
    if distance is not None or against:
        w.tell("passes", "no" if against else "yes")
    if against:
        w.tell("because", "; ".join(against))
