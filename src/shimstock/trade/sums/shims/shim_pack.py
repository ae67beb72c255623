from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.fits._apart import apart
from shimstock.trade.sums.shims._drawer import DrawerText, merged
from shimstock.trade.sums.shims._packs import nearest

TICKS = 1_000_000  # steps in one unit that shims are told apart by
LEAST = 1 / TICKS
MOST = 1e6


@a_sum(
    example="--target '0.014 in' --drawer '0.003x4, 0.005x2, 0.010x1 in'",
    cautions=(BOOK_FIRST,),
)
def shim_pack(
    *,
    target: Annotated[float, Of("length", above=0, most=MOST)],
    drawer: DrawerText,
    unit: str = "mm",
) -> Worked[dict[float, int]]:
    """The pack of shims from the drawer that comes nearest to a thickness.

    Least error first, then fewest pieces; every pack that could be nearest is looked at.

    target: thickness that is wanted, in `unit`.
    drawer: thicknesses that are there, measured, and how many of each, such as 0.003x4, 0.005x2 in.
    unit: unit of the lengths, mm or in.
    Raises NotPossible for a shim too thin or too thick to count, or for too many packs to look at.
    Source: common practice, no source: every pack is tried.

    >>> from shimstock.trade.sums.shims._drawer import parse_drawer
    >>> shim_pack(target=0.85, drawer=parse_drawer("0.10x4, 0.15x2, 0.50 mm")).value
    {0.1: 2, 0.15: 1, 0.5: 1}
    """
    unit = coherent(unit).length
    there = merged(drawer, unit)
    for size in there:
        if not LEAST <= size <= MOST:
            rule = f"must be between {LEAST:g} and {MOST:g} {unit}"
            raise NotPossible(f"a shim of {size:g} {unit}", rule, "look at its unit")
    in_ticks = [round(size * TICKS) for size in there]
    chosen = nearest(in_ticks, list(there.values()), round(target * TICKS))
    taken = {size: n for size, n in zip(there, chosen, strict=True) if n}
    w = Working()
    w.given("t_w", target, unit, meaning="wanted")
    _lines(w, taken, target, unit)
    return Worked(taken, w)


def _lines(w: Working, taken: dict[float, int], target: float, unit: str) -> None:
    """The shims taken, what they come to, and how far that is off."""
    for i, (size, n) in enumerate(taken.items(), start=1):
        w.given(f"s_{i}", size, unit)
        w.given(f"n_{i}", n, "", meaning="of these")
    shown = " + ".join(f"n_{i}·s_{i}" for i in range(1, len(taken) + 1)) or "0"
    thick = float(sum(n * size for size, n in taken.items()))
    w.step("t", shown, thick, unit, answer="thickness")
    off = apart(thick, target)
    error = round(off * TICKS) / TICKS
    w.step("e", "t − t_w", off, unit, meaning="above 0 is too thick", answer="error")
    w.tell("pack", " + ".join(f"{n} × {show(s, unit)}" for s, n in taken.items()) or "no shim")
    way = "too thick" if error > 0 else "too thin"
    w.tell("off by", f"{show(abs(error), unit)} {way}" if error else "nothing")
    w.tell("pieces", f"{sum(taken.values())}")
