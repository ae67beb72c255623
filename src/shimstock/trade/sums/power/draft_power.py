from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import ROLLOVER
from shimstock.trade.sums.declare import Of, a_sum


@a_sum(
    example="--resistance '100 kPa' --width '12 in' --depth '6 in' --count 3 --speed '3 mph'",
    cautions=(ROLLOVER,),
)
def draft_power(
    *,
    speed: Annotated[float, Of("km/h", above=0, most=100)],
    resistance: Annotated[float, Of("kPa", above=0)] | None = None,
    depth: Annotated[float, Of("m", above=0, most=2)] | None = None,
    per_width: Annotated[float, Of("kN/m", above=0)] | None = None,
    width: Annotated[float, Of("m", above=0, most=30)] | None = None,
    each: Annotated[float, Of("kN", above=0, most=100)] | None = None,
    count: Annotated[int, Of("", least=1)] = 1,
    share: Annotated[float, Of("%", above=0, most=100)] = 75,
) -> Worked[float]:
    """Drawbar power that an implement takes, and the tractor's rated drawbar power for it.

    The draft is known in one of three ways: resistance of the soil with width and depth of one
    bottom, draft for each metre of width, or the draft of each bottom, tine or row.

    speed: working speed, in km/h.
    resistance: of the soil on the section that is cut; 10 N/cm² are 100 kPa, in kPa.
    depth: depth of work, with the resistance, in m.
    per_width: draft for each metre of working width, in kN/m.
    width: of one bottom, or of the implement, in m.
    each: draft of one bottom, tine or row, in kN.
    count: how many of them there are, a count.
    share: of its rated drawbar power that a tractor is used at, in %.
    Raises NotPossible where the draft is not given in exactly one of the three ways.
    Source: P = F·v; three quarters of the rated power: worked problems of agricultural
    engineering.

    >>> round(draft_power(speed=5, resistance=100, width=0.3, depth=0.15, count=4).value, 1)
    25.0
    """
    w = Working()
    w.given("v", speed, "km/h", meaning="working speed")
    w.given("z", count, "", meaning="how many")
    f = _draft(w, (resistance, width, depth), per_width, each, count)
    power = f * speed / 3.6
    w.step("P", "F·v/3.6", power, "kW", meaning="drawbar power", answer="power")
    w.given("s", share, "%", meaning="share of the rated power used")
    w.step("P_r", "100·P/s", 100 * power / share, "kW", meaning="rated drawbar power to have",
           answer="rated power")  # fmt: skip
    return Worked(power, w)


def _draft(
    w: Working,
    cut: tuple[float | None, float | None, float | None],
    per_width: float | None,
    each: float | None,
    count: int,
) -> float:
    """The draft in kN, kept as F."""
    resistance, width, depth = cut
    if [resistance, per_width, each].count(None) != 2:
        rule = "must be known in one way"
        raise NotPossible("the draft", rule, "give one of resistance, per width and each")
    if each is not None:
        w.given("F_1", each, "kN", meaning="draft of one")
        return w.step("F", "z·F_1", count * each, "kN", meaning="draft", answer="draft")
    b = _needed("width", width)
    w.given("b", b, "m", meaning="width of one")
    if per_width is not None:
        w.given("f", per_width, "kN/m", meaning="draft for each metre")
        return w.step("F", "z·f·b", count * per_width * b, "kN", meaning="draft", answer="draft")
    d = _needed("depth", depth)
    w.given("d", d, "m", meaning="depth")
    k = w.given("k", resistance or 0, "kPa", meaning="resistance of the soil")
    return w.step("F", "z·k·b·d", count * k * b * d, "kN", meaning="draft", answer="draft")


def _needed(what: str, value: float | None) -> float:
    if value is None:
        raise NotPossible(what, "is needed for the draft", "give it, or the draft of each")
    return value
