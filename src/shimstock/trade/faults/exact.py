"""The chance of every cause, exactly: tables carried from both ends and joined at each cause."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.network import CannotBe
from shimstock.trade.faults.plan import Plan, Takes
from shimstock.trade.faults.posed import Posed
from shimstock.trade.faults.tables import backwards, forwards, if_there

if TYPE_CHECKING:
    from shimstock.trade.faults.tables import Table

REACH = 30_000_000
"""How many numbers the tables may hold in all; beyond that the exact way is left."""


@dataclass(frozen=True)
class Solved:
    """Chances of the causes; evidence: how likely it is to be told what was told.

    behind: for each step, what the steps after it come to, to draw machines by.
    """

    chances: dict[str, float]
    evidence: float
    behind: tuple[Table, ...]


def solve(posed: Posed, order: Plan) -> Solved:
    """Work out the chance of each cause.

    Raises CannotBe where what was told cannot all be true.
    """
    import numpy as np

    after: Table = np.ones(())
    behind = [after]
    for step in reversed(order.steps):
        after = backwards(after, step, posed)
        behind.append(after)
    behind.reverse()
    if not after > 0:
        raise CannotBe("what was told cannot all be true: nothing in the book explains it")
    chances = {cause: _alone(posed, cause) for cause in order.alone}
    before: Table = np.ones(())
    for step, later in zip(order.steps, behind[1:], strict=True):
        if isinstance(step, Takes):
            there = posed.there[step.cause] * float(np.vdot(before, if_there(later, step)))
            away = posed.away[step.cause] * float(np.vdot(before, later))
            chances[step.cause] = there / (there + away)
        before = forwards(before, step, posed)
    alone = np.prod([posed.there[cause] + posed.away[cause] for cause in order.alone])
    found = {cause: chances[cause] for cause in posed.there}
    return Solved(found, float(after) * float(alone), tuple(behind))


def _alone(posed: Posed, cause: str) -> float:
    there, away = posed.there[cause], posed.away[cause]
    if there + away == 0:
        raise CannotBe(f"{cause} is called confirmed, and a sign that it always brings is not seen")
    return there / (there + away)
