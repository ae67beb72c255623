from typing import Annotated

from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._apart import apart

NOTHING = Length(0)


@a_sum(
    example="--fitted '0.65 mm' --end-play '0.30 mm' --preload '0.20 mm'", cautions=(BOOK_FIRST,)
)
def shim_thickness(
    *,
    fitted: Annotated[Length, Of("length", least=0)],
    end_play: Annotated[Length, Of("length")],
    wanted: Annotated[Length, Of("length", least=0)] = NOTHING,
    preload: Annotated[Length, Of("length", least=0)] = NOTHING,
    unit: str = "in",
) -> Worked[Length]:
    """Thickness of the shim pack that turns the end play found into what is wanted.

    fitted: thickness of the pack that was in place when the play was read, in `unit`.
    end_play: play read with that pack, in `unit`; negative where it was too tight by so much.
    wanted: end play that is wanted, in `unit`.
    preload: squeeze that is wanted instead of play, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises NotPossible where play and preload are wanted together, or no pack could do it.
    Source: common workshop practice, as gearbox manuals print it: fitted + play + preload.

    >>> round(shim_thickness(
    ...     fitted=Length(0.65), end_play=Length(0.30), preload=Length(0.20), unit="mm").value, 2)
    1.15
    """
    if wanted and preload:
        both = f"end play {wanted:g} {unit} and preload {preload:g} {unit}"
        raise NotPossible(both, "cannot both be wanted", "a bearing has play or preload")
    w = Working()
    w.given("t_0", fitted, unit, meaning="pack fitted when the play was read")
    w.given("e", end_play, unit, meaning="end play found")
    if preload:
        w.given("p", preload, unit, meaning="preload wanted")
    else:
        w.given("e_w", wanted, unit, meaning="end play wanted")
    shown = "t_0 + e + p" if preload else "t_0 + e − e_w"
    thick = apart(fitted + end_play + preload, wanted)
    w.step("t", shown, thick, unit, meaning="new pack", answer="thickness")
    if thick < 0:
        rule = "cannot be: even without shims there is less play than wanted"
        would = "read the end play again, then look at the parts"
        raise NotPossible(f"a pack of {thick:.4g} {unit}", rule, would)
    return Worked(Length(thick), w)
