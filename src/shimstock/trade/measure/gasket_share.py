"""How much of a mesh's lash a gasket of the wrong thickness explains."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from shimstock.trade.machine.book import Figure, Link
from shimstock.trade.machine.words import Verdict
from shimstock.trade.measure.judge import Judged, judge
from shimstock.trade.measure.measured import Measured
from shimstock.trade.numbers.quantity import show
from shimstock.trade.numbers.units import Deg, Length
from shimstock.trade.numbers.working import Worked, Working
from shimstock.trade.sums.gears.backlash_from_centre_distance import backlash_from_centre_distance

USUAL_ANGLES = (14.5, 20.0)
DOUBTFUL = (Verdict.WORN_OUT, Verdict.BORDERLINE)


@dataclass(frozen=True)
class GasketShare:
    """For one possible pressure angle: play that the gasket adds, and the verdict on the rest.

    angle: None where the gasket's thickness is itself the play that it adds.
    over: the rest is still proven to be over the limit.
    """

    angle: float | None
    added: float
    left: float
    judged: Judged
    over: bool


def gasket_shares(
    link: Link, figure: Figure, lash: Measured, extra: float
) -> tuple[GasketShare, ...]:
    """What is left of a lash without the extra gasket, for each possible pressure angle.

    lash: as found. extra: how much too thick the gasket is, in the unit of the lash.
    Source: standard gear geometry, Δj = 2·ΔC·tan φ.
    """
    return tuple(
        _share(link, figure, lash, angle, gained)
        for angle, gained in lash_added(link, extra, lash.unit)
    )


def lash_added(
    link: Link, extra: float, unit: str
) -> tuple[tuple[float | None, Worked[Length]], ...]:
    """What a gasket adds to the play of a link, for each possible pressure angle of a mesh.

    extra: how much too thick it is, in `unit`. At a plain clearance it adds its own thickness.
    """
    if link.ratio is not None:
        w = Working()
        w.given("Δj", extra, unit, meaning="the gasket's extra thickness, all of it play")
        return ((None, Worked(Length(extra), w)),)
    return tuple(
        (
            angle,
            backlash_from_centre_distance(
                spread=Length(extra), pressure_angle=Deg(angle), unit=unit
            ),
        )
        for angle in link.pressure_angles or USUAL_ANGLES
    )


def _share(
    link: Link, figure: Figure, lash: Measured, angle: float | None, gained: Worked[Length]
) -> GasketShare:
    w = Working()
    w.extend(lash.working)
    w.extend(gained.working)
    w.note("The gasket's thickness is taken as exact.")
    left = w.step(
        "j_0",
        f"{lash.symbol} − Δj",
        lash.value - gained.value,
        lash.unit,
        meaning="left for the gears",
    )
    w.step("u_j_0", f"u_{lash.symbol}", lash.u, lash.unit)
    judged = judge(link.figure, figure, left, lash.u, working=w, symbol="j_0", gauge=lash.gauge)
    limit = figure.allowed
    over = judged.beyond and limit is not None and limit.high is not None and left > limit.high
    return GasketShare(angle, gained.value, left, judged, over)


def explained(verdict: Verdict, shares: tuple[GasketShare, ...]) -> tuple[Verdict, str]:
    """The verdict on a mesh with a wrong gasket, and the sentence for it.

    Worn only where it is worn at every possible angle; else the gasket is put right first, where
    the mesh is doubtful as found or would be with the right gasket.
    """
    unit = shares[0].judged.unit
    share = _small_to_large((abs(each.added) for each in shares), unit)
    left = _small_to_large((each.left for each in shares), unit)
    thick = shares[0].added > 0
    if thick:
        says = f"the gasket adds {share} of it, which leaves {left}"
    else:
        says = f"the thin gasket hides {share} of it, which makes {left} with the right one"
    if all(each.over for each in shares):
        return Verdict.WORN_OUT, f"{says}: {'still ' * thick}over, so the gear pair is worn"
    if any(each in DOUBTFUL for each in (verdict, *(s.judged.verdict for s in shares))):
        return Verdict.BORDERLINE, f"{says}: fit the right gasket and rock again before the gears"
    return verdict, says


def _small_to_large(values: Iterable[float], unit: str) -> str:
    several = sorted(values)
    return " to ".join(dict.fromkeys(show(each, unit) for each in (several[0], several[-1])))
