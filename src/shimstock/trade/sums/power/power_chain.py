from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.declare import Of, a_sum

LINKS = (("engine", "P_e"), ("power take-off", "P_p"), ("drawbar", "P_d"))


@a_sum(example="--engine '125 hp'")
def power_chain(
    *,
    engine: Annotated[float, Of("kW", above=0)] | None = None,
    pto: Annotated[float, Of("kW", above=0)] | None = None,
    drawbar: Annotated[float, Of("kW", above=0)] | None = None,
    share: Annotated[float, Of("%", above=0, most=100)] = 86,
) -> Worked[float]:
    """Engine, power take-off and drawbar power from one of them, by the 86 per cent rule.

    An estimate for a wheeled tractor on concrete, good to a tenth at best; only a test tells.

    engine: power at the flywheel, in kW.
    pto: power at the power take-off, in kW.
    drawbar: power at the drawbar on concrete, in kW.
    share: what each link passes on to the next, in %.
    Raises NotPossible where not exactly one power is given.
    Source: 86 per cent rule; Introduction to Agricultural Engineering Technology, converting
    tractor power ratings.

    >>> round(power_chain(engine=125).value, 2)
    92.45
    """
    known = (engine, pto, drawbar)
    if known.count(None) != 2:
        rule = "must be the only power given"
        raise NotPossible("one of engine, pto and drawbar", rule, "leave the others out")
    w = Working()
    w.note("An estimate: the 86 per cent rule on concrete.")
    w.given("c", share, "%", meaning="passed on by each link")
    at, start = next((i, value) for i, value in enumerate(known) if value is not None)
    powers = {at: w.given(LINKS[at][1], start, "kW", meaning=f"{LINKS[at][0]} power")}
    for i in range(at + 1, 3):
        shown = f"c/100·{LINKS[i - 1][1]}"
        powers[i] = _link(w, i, shown, share / 100 * powers[i - 1])
    for i in range(at - 1, -1, -1):
        shown = f"100/c·{LINKS[i + 1][1]}"
        powers[i] = _link(w, i, shown, 100 / share * powers[i + 1])
    return Worked(powers[2], w)


def _link(w: Working, i: int, shown: str, value: float) -> float:
    name, symbol = LINKS[i]
    return w.step(symbol, shown, value, "kW", meaning=f"{name} power", answer=name)
