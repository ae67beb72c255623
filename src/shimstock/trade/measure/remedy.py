"""One thing to do about a verdict: what, to which pieces, why, and what it waits for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from shimstock.trade.machine.state import PieceKey
from shimstock.trade.numbers.working import Working


class What(StrEnum):
    """The kinds of remedy, the most binding first."""

    NOT_A_PAIR = "not a pair"
    MACHINE = "machine"
    RENEW = "sleeve or new part"
    PUT_RIGHT = "put right"
    SET = "set"
    MEASURE = "measure"
    MEASURE_AGAIN = "measure again"
    USE_AGAIN = "use again"


@dataclass(frozen=True)
class Remedy:
    """One thing to do, to which pieces, and why.

    size: what is ordered, "+0.020 in", and finished: its diameter in `unit`; for machining only.
    bores: by piece, the bore to finish to, from the new piston as measured.
    held: why the order or the machinist's sheet must wait; empty when it may go.
    blocks: the pieces must not be built in.
    """

    what: What
    part: str
    pieces: tuple[PieceKey, ...]
    figures: tuple[str, ...]
    says: str
    because: tuple[str, ...] = ()
    size: str = ""
    finished: float | None = None
    unit: str = ""
    bores: Mapping[str, float] = field(default_factory=dict)
    held: tuple[str, ...] = ()
    blocks: bool = False
    workings: tuple[Working, ...] = ()
