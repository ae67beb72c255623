from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import COLD, HEAT, SOLVENT_HEAT
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.freeing._bounds import COLDEST
from shimstock.trade.sums.freeing._metals import SPREAD_SAID, Metal, MetalText, metal_line


@a_sum(
    example="--diameter '30 mm' --housing 'grey iron' --pin steel --housing-at '170 degC'",
    cautions=(HEAT, SOLVENT_HEAT),
)
def clearance_by_heat(
    *,
    diameter: Annotated[float, Of("length", above=0)],
    housing: MetalText,
    pin: MetalText,
    housing_at: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] | None = None,
    pin_at: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] | None = None,
    start: Annotated[float, Of("degC", least=COLDEST, known=(-200, 500))] = 20,
    clearance: Annotated[float, Of("length")] = 0,
    unit: str = "mm",
) -> Worked[float]:
    """Clearance that a seized pin gains, or loses, by heat on either part or by chilling the pin.

    Soaking both parts evenly tightens a pin that grows more than its housing, as steel does in
    grey iron: the gain comes from the difference in temperature. A temperature that is left out
    is the start: that part stays as it is.

    diameter: diameter of the pin, in `unit`.
    housing: what the housing is of, by name, or its growth such as 12 um/m.K.
    pin: what the pin is of, by name, or its growth such as 12 um/m.K.
    housing_at: temperature that the housing is brought to, in degC.
    pin_at: temperature that the pin is brought to or reaches, in degC.
    start: temperature that both begin at, in degC.
    clearance: clearance before, in `unit`; below 0 where the pin is held by so much.
    unit: unit of the lengths, mm or in.
    Source: Δc = D·(α_h·ΔT_h − α_p·ΔT_p), each part growing by itself; α as the working names it.

    >>> from shimstock.trade.sums.freeing._metals import parse_metal
    >>> got = clearance_by_heat(diameter=30, housing=parse_metal("10.8 um/m.K"),
    ...     pin=parse_metal("11.7 um/m.K"), housing_at=170, pin_at=170)
    >>> round(got.value, 5), got.working.answers["effect"].value
    (-0.00405, 'tightens')
    """
    unit = coherent(unit).length
    w = Working()
    w.given("D", diameter, unit, meaning="pin")
    a_h = metal_line(w, "α_h", housing, "housing")
    a_p = metal_line(w, "α_p", pin, "pin")
    w.given("T_0", start, "degC", meaning="both at the start")
    t_h, t_p = (start if at is None else at for at in (housing_at, pin_at))
    w.given("T_h", t_h, "degC", meaning="housing")
    w.given("T_p", t_p, "degC", meaning="pin")
    rise_h = w.step("ΔT_h", "T_h − T_0", t_h - start, "K", meaning="housing warmer by")
    rise_p = w.step("ΔT_p", "T_p − T_0", t_p - start, "K", meaning="pin warmer by")
    gained = diameter / 1e6 * (a_h * rise_h - a_p * rise_p)
    w.step("Δc", "D/10⁶·(α_h·ΔT_h − α_p·ΔT_p)", gained, unit, answer="gained")
    if clearance:
        w.given("c_0", clearance, unit, meaning="before")
        w.step("c", "c_0 + Δc", clearance + gained, unit, meaning="after", answer="clearance")
    if min(t_h, t_p) < min(start, 0):
        w.caution(COLD)
    _say(w, gained, rise_h == rise_p)
    _doubt(w, (housing, pin), gained, unit)
    return Worked(gained, w)


def _say(w: Working, gained: float, soaked: bool) -> None:
    """The effect in words, and what would do better where it tightens."""
    w.tell("effect", "loosens" if gained > 0 else "tightens" if gained < 0 else "changes nothing")
    if gained >= 0:
        return
    why = "Soaking both evenly tightens it" if soaked else "This tightens it"
    w.note(f"{why}: the pin grows more than the housing. Heat the housing alone and fast, or "
           "chill the pin.")  # fmt: skip


def _doubt(w: Working, metals: tuple[Metal, Metal], gained: float, unit: str) -> None:
    """How far the handbooks leave the answer open; nothing where both figures are typed."""
    if not any(metal.spread for metal in metals):
        return
    housing, pin = metals
    w.note(SPREAD_SAID)
    s_h = w.given("s_h", housing.spread, "", meaning="share that is open, housing")
    s_p = w.given("s_p", pin.spread, "", meaning="share that is open, pin")
    d = w.value("D")
    if housing == pin:  # one metal: both figures are off by the same
        w.tell("sure", "yes: both are of one metal" if not gained else "by the spread of the metal")
        return
    open_h = s_h * housing.growth * abs(w.value("ΔT_h"))
    open_p = s_p * pin.growth * abs(w.value("ΔT_p"))
    off = w.step("e", "D/10⁶·(s_h·α_h·|ΔT_h| + s_p·α_p·|ΔT_p|)", d / 1e6 * (open_h + open_p), unit,
                 meaning="at the worst", answer="open by")  # fmt: skip
    if off and off >= abs(gained):
        w.tell("sure", "no: the handbooks differ by as much as the whole change")
    else:
        w.tell("sure", "yes, whichever handbook is right")
