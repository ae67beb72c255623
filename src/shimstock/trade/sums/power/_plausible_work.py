"""What official tests ever saw of work from a gallon: a range that shows a slip."""

from typing import Literal

from shimstock.trade.numbers.working import Working

FuelKind = Literal["diesel", "petrol", "lpg", "distillate"]
# Least and most hp.h/gal in official tests of 1920 to 1984, as a later compilation gives them.
SEEN: dict[str, tuple[float | None, float]] = {
    "diesel": (9.29, 18.64),
    "petrol": (3.30, 13.18),
    "lpg": (7.26, 9.99),
    "distillate": (None, 12.44),
}


def tell_plausible(w: Working, work: float, kind: FuelKind | None) -> None:
    """Says whether official tests saw the like, where the kind of fuel is known."""
    if kind is None:
        return
    low, high = SEEN[kind]
    seen = f"at most {high:g}" if low is None else f"{low:g} to {high:g}"
    w.note(f"Official tests of 1920 to 1984 with {kind} saw {seen} hp.h/gal.")
    if work > high:
        said = "no: more than any official test saw; look at load, time and fuel again"
    elif low is not None and work < low:
        said = "no: less than any official test saw; look for a leak or a slip of the units"
    else:
        said = "yes"
    w.tell("plausible", said)
