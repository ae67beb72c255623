"""A shim pack as lines: what to lay together, and the play to expect."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Heading, Shown

if TYPE_CHECKING:
    from shimstock.workshop.shims import Laid


def laid_data(laid: Laid, *, working: bool) -> dict[str, Any]:
    """The pack as plain values."""
    asking, pack = laid.asking, laid.pack
    return {
        "figure": asking.key, "piece": asking.piece, "joint": asking.joint,
        "fitted": asking.fitted, "play": asking.play, "shims": list(pack.shims),
        "thickness": pack.thickness, "expect": laid.expect, "wanted": asking.wanted.typed,
        "stand_in": asking.figure.stand_in, "unit": pack.unit,
        "working": list(laid.working) if working else [],
    }  # fmt: skip


def laid_shown(laid: Laid, *, working: bool) -> list[Shown]:
    """The pack in sentences."""
    from shimstock.trade.measure.words import between
    from shimstock.trade.numbers.quantity import show
    from shimstock.workshop.verdicts_told import STAND_IN

    asking, unit = laid.asking, laid.pack.unit
    mark = f" [{STAND_IN}]" if asking.figure.stand_in else ""
    return [
        Heading(asking.named),
        f"Lay together {laid.counted}: {show(laid.pack.thickness, unit)}, in place of "
        f"{show(asking.fitted, unit)}.",
        f"Play to expect {show(laid.expect, unit)}, after {show(asking.play, unit)}; the book says "
        f"{between(asking.wanted)}{mark}.",
        laid.lies,
        laid.then,
        *(f"    {line}" for line in (laid.working if working else ())),
    ]
