"""What band brakes share: how much harder the tight end pulls than the slack one."""

from math import exp, pi

from shimstock.trade.numbers.working import Working


def grip(w: Working, friction: float, wrap: float) -> float:
    """Tension of the tight end over that of the slack end, by the belt friction formula."""
    w.given("μ", friction, "", meaning="friction of the band on the drum")
    w.given("φ", wrap, "deg", meaning="angle of wrap")
    x = w.step("x", "μ·φ·π/180", friction * wrap * pi / 180, "")
    return w.step("k", "exp(x)", exp(x), "", meaning="tight tension over slack tension")
