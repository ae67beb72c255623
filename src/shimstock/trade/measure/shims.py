"""Choosing a shim pack, and the end play that a row of parts leaves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.take import in_unit
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.units import Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.shims.shim_thickness import shim_thickness
from shimstock.trade.sums.stacks._links import Link
from shimstock.trade.sums.stacks.stack import stack

TICKS = 1_000_000
"""Steps in one unit: shims are told apart to a millionth of an inch or millimetre."""
MOST_SHIMS = 12


@dataclass(frozen=True)
class Pack:
    """Shims to lay together, thickest first, and what they come to."""

    shims: tuple[float, ...]
    thickness: float
    unit: str


def choose_pack(
    offered: Sequence[float], *, low: float, high: float, unit: str = "in"
) -> Worked[Pack | None]:
    """The fewest shims whose thickness lies from low to high; among those, nearest the middle.

    offered: thicknesses that can be had, any number of each; all in `unit`. None where no pack of
    up to twelve does. Raises ValueError for a thickness not above 0 or a band upside down.
    Source: every pack is tried, fewest shims first.

    >>> choose_pack([0.003, 0.005, 0.010], low=0.0175, high=0.0185).value.shims
    (0.01, 0.005, 0.003)
    """
    sizes = sorted({_ticks(size) for size in offered}, reverse=True)
    if not sizes or sizes[-1] <= 0 or low > high:
        raise ValueError(f"shims {list(offered)} must be above 0, and {low:g} not above {high:g}")
    w = Working(source="every pack is tried, fewest shims first")
    w.given("t_min", low, unit, meaning="thinnest pack that will do")
    w.given("t_max", high, unit, meaning="thickest pack that will do")
    found = _fewest(sizes, low * TICKS, high * TICKS)
    if found is None:
        w.note(f"No pack of up to {MOST_SHIMS} of these shims lies in the band.")
        return Worked(None, w)
    shims = tuple(size / TICKS for size in found)
    for n, size in enumerate(shims, start=1):
        w.given(f"s_{n}", size, unit)
    total = sum(found) / TICKS
    if shims:
        w.step("t", " + ".join(f"s_{n}" for n in range(1, len(shims) + 1)), total, unit)
    else:
        w.note("No shim at all is needed.")
    return Worked(Pack(shims, total, unit), w)


def _ticks(size: float) -> int:
    return round(size * TICKS)


def _fewest(sizes: Sequence[int], low: float, high: float) -> tuple[int, ...] | None:
    """The smallest pack within the band, thickest shim first."""
    noise = 1e-6
    reached: dict[int, tuple[int, ...]] = {0: ()}
    for _ in range(MOST_SHIMS + 1):
        fitting = [total for total in reached if low - noise <= total <= high + noise]
        if fitting:
            best = min(fitting, key=lambda total: (abs(total - (low + high) / 2), total))
            return tuple(sorted(reached[best], reverse=True))
        longer: dict[int, tuple[int, ...]] = {}
        for total, pack in reached.items():
            for size in sizes:
                if total + size <= high + noise:
                    longer.setdefault(total + size, (*pack, size))
        reached = longer
    return None


def pack_for_end_play(
    offered: Sequence[float], *, fitted: float, end_play: float, wanted: Range
) -> Worked[Pack | None]:
    """The pack that turns the end play found into one within the wanted range.

    offered, fitted, end_play: in the unit of `wanted`; fitted is the pack in place when the play
    was read. Raises ValueError where even no shims would leave too little play.
    Source: common workshop practice: pack fitted, plus the play, less the play wanted.
    """
    if wanted.low is None or wanted.high is None:
        raise ValueError(f"{wanted.typed}: a lowest and a highest play are needed")
    thick = shim_thickness(
        fitted=Length(fitted),
        end_play=Length(end_play),
        wanted=Length(wanted.low),
        unit=wanted.unit,
    )
    thin = max(0.0, fitted + end_play - wanted.high)
    pack = choose_pack(offered, low=thin, high=thick.value, unit=wanted.unit)
    w = Working()
    w.extend(pack.working)
    w.note(f"Play found {show(end_play, wanted.unit)} with {show(fitted, wanted.unit)} of shims.")
    if pack.value is not None:
        w.given("t_0", fitted, wanted.unit, meaning="pack fitted when the play was read")
        w.given("e", end_play, wanted.unit, meaning="end play found")
        left = fitted + end_play - pack.value.thickness
        symbol = "t" if pack.value.shims else "0"
        w.step("e_new", f"t_0 + e − {symbol}", left, wanted.unit, meaning="end play to expect")
    return Worked(pack.value, w)


def end_play(parts: Sequence[tuple[str, Measured, float]], unit: str) -> Measured:
    """The play that a row of parts leaves in its housing, with its uncertainty.

    parts: name, size as measured, and +1 for what makes room or −1 for what fills it.
    Source: dimensional chain arithmetic; independent readings by JCGM 100:2008, 5.1.2.
    """
    links = [
        Link(name, Length(size.value), Length(2 * size.u), counts) for name, size, counts in parts
    ]
    worked = stack(links=links, unit=unit)
    w = worked.working
    w.note("Each ± is the expanded uncertainty of its reading, k = 2.")
    u = w.step("u_x", "t_rss/2", worked.value.rss / 2, unit, meaning="standard uncertainty")
    gauge = max((size for _, size, _ in parts), key=lambda size: size.u).gauge
    return Measured(worked.value.nominal, w, u, unit, "x", in_unit(gauge, unit))
