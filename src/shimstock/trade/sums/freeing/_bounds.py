"""What a temperature that was worked out is held against: what can be, and what the part may."""

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Working
from shimstock.trade.sums.cautions import COLD

USUAL = (
    "Usual ceilings, common practice, no source: a rolling bearing 120 °C, a seal 100, a hardened "
    "or tempered part 150, plain steel and iron 300; never red. The maker's book goes first."
)

COLDEST = -273.15  # degC
DRY_ICE = -78  # degC
LIQUID_NITROGEN = -196  # degC


def can_be(at: float, instead: str) -> None:
    """Raises NotPossible for a temperature colder than anything can be."""
    if at <= COLDEST:
        raise NotPossible(f"{at:.4g} degC", "is colder than anything can be", instead)


def within(w: Working, at: float, limit: float | None, chilled: bool) -> None:
    """Tells whether a temperature is within what the part may have."""
    if chilled:
        w.caution(COLD)
        w.tell("cold", _cold(at))
    if limit is None:
        w.tell("within the limit", "no limit was typed: look what the part may have")
        if not chilled:
            w.note(USUAL)
        return
    w.given("T_l", limit, "degC", meaning="limit of the part")
    beyond = at < limit if chilled else at > limit
    w.tell("within the limit", "no: do not, or it takes harm" if beyond else "yes")
    if beyond:
        w.caution(
            f"{at:.0f} degC is beyond the part's limit, {limit:g} degC: another way is wanted."
        )


def _cold(at: float) -> str:
    if at >= DRY_ICE:
        return f"dry ice, about {DRY_ICE} degC, is cold enough"
    if at >= LIQUID_NITROGEN:
        return f"dry ice is not cold enough; liquid nitrogen, about {LIQUID_NITROGEN} degC, is"
    return "not even liquid nitrogen is cold enough: heat the other part"
