from math import pi, sqrt
from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOLT, OLD_BOLT, OLD_GASKET
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.gaskets._materials import GASKETS, Material

WIDEST_WHOLE = 0.25  # in: a seat up to this width counts whole


@a_sum(
    example="--outside '4 1/2 in' --contact '1/2 in' --pressure '60 psi' "
    "--material 'vegetable fibre' --bolts 8",
    cautions=(BOLT, OLD_BOLT, OLD_GASKET),
)
def bolt_load(
    *,
    outside: Annotated[float, Of("in", above=0)],
    contact: Annotated[float, Of("in", above=0)],
    pressure: Annotated[float, Of("psi", least=0)],
    material: Material = "vegetable fibre",
    m: Annotated[float, Of("", least=0)] | None = None,
    y: Annotated[float, Of("psi", least=0)] | None = None,
    bolts: Annotated[int, Of("", least=1, found="count")] | None = None,
) -> Worked[float]:
    """Load that all bolts of a round flat gasket must give: to seat it, and to hold the pressure.

    outside: outside diameter of the face that presses the gasket, in in.
    contact: width of the ring that is pressed, in in.
    pressure: pressure inside, in psi.
    material: gasket material of the table, no unit.
    m: gasket factor, where it is known better than the table, no unit.
    y: seating stress, where it is known better than the table, in psi.
    bolts: bolts that share the load, a count.
    Raises NotPossible where the ring is wider than half of its diameter.
    Source: ASME Boiler and Pressure Vessel Code, section VIII division 1, appendix 2, with m and y
    of its table 2-5.1.

    >>> round(bolt_load(outside=17.75, contact=0.75, pressure=100,
    ...     material="spiral wound steel").value)
    164849
    """
    if 2 * contact >= outside:
        rule = f"must be less than half of the outside diameter, {outside:g} in"
        raise NotPossible(f"contact {contact:g} in", rule, "measure from outer to inner edge")
    w = Working()
    b, g = _seat(w, outside, contact)
    m, y = _factors(w, material, m, y)
    w.given("P", pressure, "psi", meaning="pressure inside")
    h = w.step("H", "π/4·G²·P", pi / 4 * g**2 * pressure, "lbf",
               meaning="pushes the cover off", answer="pressure force")  # fmt: skip
    held = h + 2 * pi * b * g * m * pressure
    w.step("W_m1", "H + 2·π·b·G·m·P", held, "lbf", answer="holding load")
    seated = w.step("W_m2", "π·b·G·y", pi * b * g * y, "lbf", answer="seating load")
    load = w.step("W", "max(W_m1, W_m2)", max(held, seated), "lbf", answer="load")
    w.tell("governs", "seating the gasket" if seated > held else "holding the pressure")
    if bolts is not None:
        w.given("n", bolts, "", meaning="bolts")
        w.step("F", "W/n", load / bolts, "lbf", meaning="least pull of one", answer="each bolt")
    return Worked(load, w)


def _seat(w: Working, outside: float, contact: float) -> tuple[float, float]:
    """Effective width of the seat and diameter at which its reaction acts, in in."""
    w.given("A", outside, "in", meaning="outside diameter")
    w.given("N", contact, "in", meaning="width pressed")
    b_0 = w.step("b_0", "N/2", contact / 2, "in", meaning="basic seating width")
    if b_0 <= WIDEST_WHOLE:
        w.note("b_0 is at most 1/4 in: it counts whole, at the mean diameter.")
        b = w.step("b", "b_0", b_0, "in", answer="seat width")
        return b, w.step("G", "A − N", outside - contact, "in", answer="gasket diameter")
    w.note("b_0 is more than 1/4 in: only part of it counts.")
    b = w.step("b", "0.5·√(b_0)", 0.5 * sqrt(b_0), "in", answer="seat width")
    return b, w.step("G", "A − 2·b", outside - 2 * b, "in", answer="gasket diameter")


def _factors(w: Working, material: str, m: float | None, y: float | None) -> tuple[float, float]:
    """Gasket factor and seating stress: as typed, else of the table."""
    of = GASKETS[material]
    if m is None or y is None:
        w.note(f"Table 2-5.1 for {of.words}: m {of.m:g}, y {of.y:g} psi.")
    m = w.given("m", of.m if m is None else m, "", meaning="gasket factor")
    return m, w.given("y", of.y if y is None else y, "psi", meaning="seating stress")
