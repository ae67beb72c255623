"""Which threads of the tables a measured one could be, and what tells them apart."""

from dataclasses import dataclass

from shimstock.trade.numbers.conversion import convert
from shimstock.trade.sums.fasteners._series import Row, rows


@dataclass(frozen=True)
class Candidate:
    """A thread of the tables, its diameter and pitch in the unit of measuring, and its misfit."""

    row: Row
    d: float
    pitch: float
    misfit: float


def candidates(
    nominal: tuple[float, float], pitch: float, share: float, unit: str
) -> list[Candidate]:
    """Threads whose nominal diameter and pitch lie within what was measured, best first."""
    low, high = nominal
    every = [_measured(row, (low + high) / 2, pitch, unit) for row in rows()]
    fitting = [
        each
        for each in every
        if low <= each.d <= high and abs(each.pitch - pitch) <= share * each.pitch
    ]
    return sorted(fitting, key=lambda each: round(each.misfit, 9))


def nearest_names(diameter: float, pitch: float, unit: str) -> list[str]:
    """The three threads of the tables that lie nearest."""
    every = [_measured(row, diameter, pitch, unit) for row in rows()]
    return [each.row.name for each in sorted(every, key=lambda each: each.misfit)[:3]]


def _measured(row: Row, d: float, pitch: float, unit: str) -> Candidate:
    own, p = convert(row.d, row.unit, unit), convert(row.pitch, row.unit, unit)
    return Candidate(row, own, p, abs(own - d) / own + abs(p - pitch) / p)


def fineness(row: Row) -> str:
    """Threads an inch, or the pitch in mm."""
    return f"{row.n:g} threads an inch" if row.n is not None else f"pitch {row.pitch:g} mm"


def told_apart(found: list[Candidate], unit: str) -> str:
    """What tells the candidates apart, in words."""
    if len(found) == 1:
        return "only one fits: a new nut of it must run on by hand over its whole length"
    ways = []
    if len({each.row.form for each in found}) > 1:
        forms = [f"{e.row.series} {e.row.form.angle:g}° {e.row.form.crests}" for e in found]
        ways.append(f"angle and crests, with a thread gauge against the light ({_once(forms)})")
    if len({round(each.pitch, 6) for each in found}) > 1:
        lengths = [f"{e.row.name} {10 * e.pitch:.4g} {unit}" for e in found]
        ways.append(f"pitch, over ten threads ({_once(lengths)})")
    if len({round(each.d, 6) for each in found}) > 1:
        sizes = [f"{e.row.name} {e.d:.4g} {unit}" for e in found]
        ways.append(f"outside diameter, on an unworn bolt ({_once(sizes)})")
    return "; ".join(ways) or "nothing that is measured: they are the same thread"


def _once(texts: list[str]) -> str:
    return ", ".join(dict.fromkeys(texts))
