from dataclasses import dataclass
from math import pi
from typing import Annotated

from shimstock.trade.numbers.coherent import coherent
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.cautions import BOOK_FIRST
from shimstock.trade.sums.declare import Of, a_sum
from shimstock.trade.sums.engine._chamber import Bore, Ratio, Stroke


@dataclass(frozen=True)
class Overbored:
    """Growth of the swept volume in per cent, and the compression ratio after it."""

    growth: float
    ratio: float


@a_sum(
    example="--bore '4.250 in' --new-bore '4.290 in' --ratio 6 --stroke '5.250 in' --cylinders 4",
    cautions=(BOOK_FIRST,),
)
def overbore(
    *,
    bore: Bore,
    new_bore: Annotated[float, Of("length", above=0)],
    ratio: Ratio,
    stroke: Stroke | None = None,
    cylinders: Annotated[int, Of("", least=1, found="cylinders")] = 1,
    unit: str = "mm",
) -> Worked[Overbored]:
    """What boring out does to the swept volume and, with the same chamber, to the compression.

    bore: diameter as it was new, in `unit`.
    new_bore: diameter it is bored to, in `unit`.
    ratio: compression ratio before, no unit.
    stroke: travel of the piston, where the swept volume itself is wanted, in `unit`.
    cylinders: how many there are, a count.
    unit: unit of the lengths, mm or in.
    Raises NotPossible where the new bore is smaller.
    Source: geometry, V ∝ D² and r' = 1 + (r − 1)·(D'/D)² with the clearance volume unchanged.

    >>> round(overbore(bore=4.25, new_bore=4.29, ratio=6, unit="in").value.ratio, 4)
    6.0946
    """
    if new_bore < bore:
        rule = f"must not be below the old, {bore:g} {unit}"
        raise NotPossible(f"new bore {new_bore:g} {unit}", rule, "look whether they are swapped")
    w = Working()
    w.given("D", bore, unit, meaning="bore before")
    w.given("D'", new_bore, unit, meaning="bore after")
    w.given("r", ratio, "", meaning="compression ratio before")
    q = w.step("q", "(D'/D)²", (new_bore / bore) ** 2, "", meaning="swept volume times this")
    growth = 100 * (q - 1)
    w.step("ΔV", "100·(q − 1)", growth, "%", meaning="more swept volume", answer="growth")
    after = 1 + (ratio - 1) * q
    w.step("r'", "1 + (r − 1)·q", after, "", meaning="ratio after", answer="ratio")
    if stroke is not None:
        _volumes(w, bore, stroke, cylinders, q, unit)
    return Worked(Overbored(growth, after), w)


def _volumes(w: Working, bore: float, stroke: float, cylinders: int, q: float, unit: str) -> None:
    """Swept volume before and after, kept as V and V'."""
    volume = coherent(unit).volume
    w.given("L", stroke, unit, meaning="stroke")
    w.given("z", cylinders, "", meaning="cylinders")
    before = pi / 4 * bore**2 * stroke * cylinders
    w.step("V", "π/4·D²·L·z", before, volume, meaning="swept volume", answer="before")
    w.step("V'", "q·V", q * before, volume, meaning="swept volume bored out", answer="after")
