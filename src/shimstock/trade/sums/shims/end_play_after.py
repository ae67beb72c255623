from typing import Annotated

from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._apart import apart


@a_sum(example="--fitted '0.65 mm' --end-play '0.30 mm' --pack '0.80 mm'", cautions=(BOOK_FIRST,))
def end_play_after(
    *,
    fitted: Annotated[Length, Of("length", least=0)],
    end_play: Annotated[Length, Of("length")],
    pack: Annotated[Length, Of("length", least=0)],
    unit: str = "in",
) -> Worked[Length]:
    """End play that another shim pack will leave, or the preload it will put on.

    fitted: thickness of the pack that was in place when the play was read, in `unit`.
    end_play: play read with that pack, in `unit`; negative where it was too tight by so much.
    pack: thickness of the pack that goes in, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Source: common workshop practice: the play found, plus the pack taken out, less the one put in.

    >>> round(end_play_after(
    ...     fitted=Length(0.65), end_play=Length(0.30), pack=Length(0.80), unit="mm").value, 2)
    0.15
    """
    w = Working()
    w.given("t_0", fitted, unit, meaning="pack fitted when the play was read")
    w.given("e", end_play, unit, meaning="end play found")
    w.given("t", pack, unit, meaning="pack that goes in")
    left = apart(end_play + fitted, pack)
    w.step("e_new", "e + t_0 − t", left, unit, meaning="below 0 is preload", answer="end play")
    w.tell("it is", "play" if left > 0 else "preload" if left < 0 else "neither play nor preload")
    return Worked(Length(left), w)
