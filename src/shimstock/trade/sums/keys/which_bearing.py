from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.keys._bearings import BEARINGS, HELD, Bearing

NEAREST = 3


@a_sum(example="--bore '25 mm' --outside '52 mm' --width '15 mm'")
def which_bearing(
    *,
    bore: Annotated[float, Of("mm", above=0)],
    outside: Annotated[float, Of("mm", above=0)],
    width: Annotated[float, Of("mm", above=0)] | None = None,
    error: Annotated[float, Of("mm", least=0, most=2)] = 0.1,
) -> Worked[tuple[str, ...]]:
    """Which deep-groove ball bearing has this bore, outside and width.

    Sizes may be typed in inches; many old bearings are true inch bearings and then fit none here.

    bore: bore of the inner ring, in mm.
    outside: outside of the outer ring, in mm.
    width: width, where it could be measured, in mm.
    error: how far each may be off, in mm.
    Raises NotPossible where the outside is not larger than the bore.
    Source: ISO 15, boundary dimensions of radial bearings, series 10, 02 and 03; most rows read in
    a printed chart, the others from memory.

    >>> which_bearing(bore=25, outside=52, width=15).value
    ('6205',)
    """
    if outside <= bore:
        rule = f"must be larger than the bore, {bore:g} mm"
        raise NotPossible(f"outside {outside:g} mm", rule, "look whether the two are swapped")
    w = Working()
    w.given("d", bore, "mm", meaning="bore")
    w.given("D", outside, "mm", meaning="outside")
    if width is not None:
        w.given("B", width, "mm", meaning="width")
    w.given("e", error, "mm", meaning="each may be off by")

    def off(each: Bearing) -> float:
        widths = 0.0 if width is None else abs(each.width - width)
        return max(abs(each.bore - bore), abs(each.outside - outside), widths)

    near = sorted(BEARINGS.values(), key=off)[:NEAREST]
    found = tuple(each.code for each in BEARINGS.values() if off(each) <= error + 1e-9)
    w.tell("bearing", " or ".join(found) if found else "none of this table")
    if not found:
        w.tell("nearest", "; ".join(f"{each.code}, {each.size}" for each in near))
        w.note(f"The table holds {HELD}. It may be an inch, roller or double-row bearing.")
    return Worked(found, w)
