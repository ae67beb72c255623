from typing import Annotated, Literal

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums._together import goes_with
from shimstock.trade.sums.brakes._lining_rules import LIMITS
from shimstock.trade.sums.cautions import BRAKES, LINING_DUST
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--thickness '5/64 in' --new '3/16 in' --worked '900 h'",
    cautions=(LINING_DUST, BRAKES),
)
def lining_left(
    *,
    thickness: Annotated[float, Of("mm", least=0, most=50, found="lining thickness")],
    rule: Literal[
        "shop rule",
        "heavy vehicle manual",
        "steering air drum strip",
        "steering air drum pads",
        "steering air disc",
        "steering hydraulic",
        "other air drum",
        "other air disc",
        "other hydraulic",
    ] = "shop rule",
    limit: Annotated[float, Of("mm", above=0, most=50, found="limit of lining thickness")]
    | None = None,
    new: Annotated[float, Of("mm", above=0, most=50)] | None = None,
    worked: Annotated[float, Of("h", above=0)] | None = None,
) -> Worked[float]:
    """Lining left above the limit of a rule or of the book, and the hours that it may last.

    The shop rule measures above the rivet heads; the others measure the whole lining. The rules
    for steering and other axles are road law for lorries and buses (49 CFR 393.47): for a farm
    tractor they are a likeness only.

    thickness: thinnest place measured, above the rivet heads or whole as the rule says, in mm.
    rule: whose limit is taken where the book gives none, no unit.
    limit: limit of the maker's book, which goes before any rule, in mm.
    new: thickness when the lining was new, measured the same way, in mm.
    worked: hours worked since then, in h.
    Raises NotPossible where the lining is thicker than it was new, or hours stand without that.
    Source: shop rule of 1/32 in above the rivet heads, common practice as several service manuals
    print it; 49 CFR 393.47; a heavy-vehicle brake manual.

    >>> round(lining_left(thickness=2).value, 4)
    1.2063
    """
    goes_with("hours worked", worked, "thickness when new", new)
    w = Working()
    w.given("t", thickness, "mm", meaning="thinnest place")
    least = _limit(w, rule, limit)
    left = w.step("t_l", "t − t_m", thickness - least, "mm", meaning="left to wear", answer="left")
    w.tell("fit for use", "yes" if left >= 0 else "no")
    if left < 0:
        w.note("Reline both sides of the axle together.")
    if new is not None:
        _since_new(w, thickness, left, new, worked)
    return Worked(left, w)


def _limit(w: Working, rule: str, limit: float | None) -> float:
    if limit is not None:
        w.note(
            "The limit is that of the book. Measure above the rivet heads too: the worse counts."
        )
        return w.step("t_m", repr(limit), limit, "mm", answer="limit")
    shown, value, words = LIMITS[rule]
    w.note(words)
    return w.step("t_m", shown, value, "mm", meaning="limit", answer="limit")


def _since_new(w: Working, thickness: float, left: float, new: float, worked: float | None) -> None:
    """What has worn, and how long the rest lasts where it goes on wearing as it did."""
    if new <= thickness:
        raise NotPossible(
            f"thickness {thickness:g} mm",
            f"must be less than when new, {new:g} mm",
            "measure both the same way; are they swapped?",
        )
    w.given("t_n", new, "mm", meaning="when new")
    gone = w.step("t_g", "t_n − t", new - thickness, "mm", meaning="worn so far", answer="worn")
    if worked is None:
        return
    w.given("h", worked, "h", meaning="worked since then")
    rate = w.step("v", "t_g/h", gone / worked, "", meaning="mm an hour")
    w.step("h_l", "max(t_l, 0)/v", max(left, 0) / rate, "h", answer="hours left")
