from math import pi

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working


def ring_gap(
    *, bore: Length, least: float = 0.0035, most: float = 0.004, unit: str = "in"
) -> Worked[tuple[Length, Length]]:
    """Least and most end gap of a new piston ring by the rule of so much for each inch of bore.

    The maker's figure for the engine in hand beats the rule.
    bore: diameter of the bore that the ring will run in, in `unit`.
    least: smallest gap for each unit of bore, no unit.
    most: largest gap for each unit of bore, no unit.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where the bore is not above 0 or the shares are swapped.
    Source: common practice, no source: 0.0035 to 0.004 in for each inch of bore.

    >>> [round(gap, 5) for gap in ring_gap(bore=Length(3.5)).value]
    [0.01225, 0.014]
    """
    if not (bore > 0 and 0 < least <= most):
        raise ValueError(f"bore {bore:g} {unit} must be above 0, and {least:g} not above {most:g}")
    w = Working(
        source="common practice, no source: so much for each inch of bore",
        cautions=["The maker's figure beats the rule; a ring that butts when hot breaks."],
    )
    w.given("D", bore, unit, meaning="bore")
    w.given("k_1", least, "", meaning="least gap for each unit of bore")
    w.given("k_2", most, "", meaning="most gap for each unit of bore")
    low = w.step("g_min", "k_1·D", least * bore, unit, meaning="least gap")
    high = w.step("g_max", "k_2·D", most * bore, unit, meaning="most gap")
    return Worked((Length(low), Length(high)), w)


def ring_gap_growth(*, wear: Length, unit: str = "in") -> Worked[Length]:
    """How much wider a ring's gap stands in a bore that has worn.

    wear: growth of the bore in diameter, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: geometry, the circumference grows by π for each unit of diameter.

    >>> round(ring_gap_growth(wear=Length(0.010)).value, 4)
    0.0314
    """
    w = Working(source="geometry: the circumference grows by π for each unit of diameter")
    w.given("ΔD", wear, unit, meaning="wear of the bore in diameter")
    return Worked(Length(w.step("Δg", "π·ΔD", pi * wear, unit, meaning="gap grows by")), w)
