from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working

NOTHING = Length(0)


def shim_thickness(
    *,
    fitted: Length,
    end_play: Length,
    wanted: Length = NOTHING,
    preload: Length = NOTHING,
    unit: str = "in",
) -> Worked[Length]:
    """Thickness of the shim pack that turns the end play found into what is wanted.

    fitted: thickness of the pack that was in place when the play was read, in `unit`.
    end_play: play read with that pack, in `unit`; negative where it was too tight by so much.
    wanted: end play that is wanted, in `unit`.
    preload: squeeze that is wanted instead of play, in `unit`.
    unit: unit of the lengths, such as in or mm.
    Raises ValueError where play and preload are wanted together, or no pack could do it.
    Source: common workshop practice, as gearbox manuals print it: fitted + play + preload.

    >>> round(shim_thickness(
    ...     fitted=Length(0.65), end_play=Length(0.30), preload=Length(0.20), unit="mm").value, 2)
    1.15
    """
    if wanted < 0 or preload < 0 or (wanted and preload):
        raise ValueError(
            f"wanted end play {wanted:g} {unit} and preload {preload:g} {unit}: one of them, "
            "not below 0; a bearing has play or preload"
        )
    w = Working(source="common workshop practice: pack fitted, plus the play to be taken up")
    w.given("t_0", fitted, unit, meaning="pack fitted when the play was read")
    w.given("e", end_play, unit, meaning="end play found")
    if preload:
        w.given("p", preload, unit, meaning="preload wanted")
    else:
        w.given("e_w", wanted, unit, meaning="end play wanted")
    shown = "t_0 + e + p" if preload else "t_0 + e − e_w"
    thick = w.step("t", shown, fitted + end_play + preload - wanted, unit, meaning="new pack")
    if thick < 0:
        raise ValueError(
            f"a pack of {thick:.4g} {unit} cannot be: even without shims there is less play than "
            "wanted; read the end play again, then look at the parts"
        )
    return Worked(Length(thick), w)
