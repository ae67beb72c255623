from typing import Annotated, Literal

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import HEAT, SOLVENT_HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST, can_be, within
from shimstock.trade.sums.freeing._metals import SPREAD_SAID, MetalText, metal_line

Way = Literal["heat the housing", "heat both", "chill the pin"]
RATES = {"heat the housing": "α_h", "heat both": "α_h − α_p", "chill the pin": "−α_p"}


RED = 600.0  # degC at which steel glows; nothing is freed above it and used again


@a_sum(
    example="--diameter '30 mm' --housing 'grey iron' --pin steel --wanted '0.03 mm' "
    "--limit '200 degC'",
    cautions=(HEAT, SOLVENT_HEAT),
)
def heat_to_free(
    *,
    diameter: Annotated[float, Of("length", above=0)],
    housing: MetalText,
    pin: MetalText,
    wanted: Annotated[float, Of("length", above=0)],
    clearance: Annotated[float, Of("length")] = 0,
    way: Way = "heat the housing",
    limit: Annotated[float, Of("degC", least=COLDEST)] | None = None,
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    unit: str = "mm",
) -> Worked[float]:
    """Temperature that gives a seized pin the clearance wanted, held against what the part may.

    Heating both is refused where the pin grows as much as the housing or more: it never frees it.
    The part that is not named stays at the start; heat that creeps into the pin undoes the gain.

    diameter: diameter of the pin, in `unit`.
    housing: what the housing is of, by name, or its growth such as 12 um/m.K.
    pin: what the pin is of, by name, or its growth such as 12 um/m.K.
    wanted: clearance that is wanted, in `unit`.
    clearance: clearance before, in `unit`; below 0 where the pin is held by so much.
    way: what is done.
    limit: hottest, or coldest, that the part may have, in degC.
    start: temperature that both begin at, in degC.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the clearance is there already or no such heat can give it.
    Source: Δc = D·(α_h·ΔT_h − α_p·ΔT_p), solved for the temperature; α as the working names it.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> round(heat_to_free(diameter=30, housing=parse_metal("grey iron"),
    ...     pin=parse_metal("steel"), wanted=0.0486).value)
    170
    """
    unit = coherent(unit).length
    if clearance >= wanted:
        rule = f"is already the {wanted:g} {unit} that is wanted, or more"
        raise NotPossible(f"clearance {clearance:g} {unit}", rule, "no heat is needed")
    w = Working()
    w.given("D", diameter, unit, meaning="pin")
    a_h = metal_line(w, "α_h", housing, "housing")
    a_p = metal_line(w, "α_p", pin, "pin")
    w.given("c_0", clearance, unit, meaning="before")
    w.given("c", wanted, unit, meaning="wanted")
    w.given("T_0", start, "degC", meaning="both at the start")
    rate = {"heat the housing": a_h, "heat both": a_h - a_p, "chill the pin": -a_p}[way]
    w.note(f"What is done: {way}.")
    w.step("r", RATES[way], rate, "um/m.K", meaning="gained a degree")
    if way == "heat both" and rate <= 0:
        rule = "tightens it, since the pin grows as much as the housing or more"
        raise NotPossible("heating both", rule, "heat the housing alone, or chill the pin")
    rise = w.step("ΔT", "(c − c_0)/(D·r/10⁶)", (wanted - clearance) / (diameter * rate / 1e6), "K",
                  answer="warming")  # fmt: skip
    at = w.step("T", "T_0 + ΔT", start + rise, "degC", answer="temperature")
    can_be(at, "heat the housing instead")
    if at > RED:
        rule = f"is beyond red heat, {RED:g} degC"
        raise NotPossible(f"{at:.0f} degC", rule, "look at the clearance wanted, and its unit")
    within(w, at, limit, chilled=way == "chill the pin")
    if limit is not None:
        w.step(
            "c_l",
            "c_0 + D·r/10⁶·(T_l − T_0)",
            clearance + diameter * rate / 1e6 * (limit - start),
            unit,
            answer="clearance at the limit",
        )
    if housing.spread or pin.spread:
        w.note(SPREAD_SAID)
    return Worked(at, w)
