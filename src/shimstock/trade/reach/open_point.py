"""One point of a gate: open, or closed by an act or as the machine came."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

Kind = Literal[
    "gate",
    "fault",
    "close",
    "torque",
    "open again",
    "leak check",
    "part",
    "reading",
    "set",
    "question",
]


@dataclass(frozen=True)
class OpenPoint:
    """One thing that still stands before a gate.

    key: what an answer is kept under. where: key of the joint, part, figure, set, question or gate,
    or the number of a search. minutes: 0 where nobody can say. hard: no reason written down can set
    it aside.
    """

    key: str
    kind: Kind
    where: str
    what: str
    minutes: float
    hard: bool
    would_do: str


class Closed(StrEnum):
    """Why a point does not stand: somebody saw to it, or nobody has touched the thing."""

    SETTLED = "settled"
    AS_IT_CAME = "as it came"


Looked = OpenPoint | Closed
"""A point that was looked at."""


def by_act(touched: bool) -> Closed:
    """A closed point of a thing that somebody here has touched, or has not."""
    return Closed.SETTLED if touched else Closed.AS_IT_CAME
