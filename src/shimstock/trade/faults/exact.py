"""The chance of every cause, exactly: tables carried from both ends and joined at each cause."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.trade.faults.network import NOT_ALL_TRUE, CannotBe
from shimstock.trade.faults.plan import Opens, Plan, Takes
from shimstock.trade.faults.posed import Posed
from shimstock.trade.faults.tables import backwards, brought_on, forwards, taken

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

    chances, behind, scale = carried(posed, order, np.ones(()))
    alone = np.sum([np.log(posed.there[cause] + posed.away[cause]) for cause in order.alone])
    found = {cause: float(chances[cause]) for cause in posed.there}
    return Solved(found, float(behind[0] * np.exp(scale + alone)), behind)


def carried(
    posed: Posed, order: Plan, start: Table
) -> tuple[dict[str, Table], tuple[Table, ...], Table]:
    """The chance of each cause, what the steps after each step come to, and its scale as a log.

    start: 1 for one network; for several at once, whose numbers are then rows with a value for
    each, as many ones: chances are rows too. Tables are scaled as findings are closed, since many
    of them come to less than a float can hold.
    Raises CannotBe where what was told cannot all be true.
    """
    import numpy as np

    after, scale = start, np.zeros_like(start)
    behind = [after]
    for step in reversed(order.steps):
        after = backwards(after, step, posed)
        if isinstance(step, Opens):
            after, factor = _scaled(after, start)
            scale = scale + np.log(factor)
        behind.append(after)
    behind.reverse()
    if not (after > 0).all():
        raise CannotBe(NOT_ALL_TRUE)
    chances = _alone(posed, order.alone, start)
    before = start
    for step, later in zip(order.steps, behind[1:], strict=True):
        if isinstance(step, Takes):
            brought = brought_on(before, step)
            there = posed.there[step.cause] * _joined(brought, later, start)
            away = posed.away[step.cause] * _joined(before, later, start)
            chances[step.cause] = there / (there + away)
            before = taken(before, brought, step, posed)
        else:
            before, _ = _scaled(forwards(before, step), start)
    return chances, tuple(behind), scale


def _scaled(table: Table, start: Table) -> tuple[Table, Table]:
    """A table by its largest number, and that number; for several networks, each by its own.

    Raises CannotBe where nothing in it is left.
    """
    largest = table.max(axis=tuple(range(table.ndim - start.ndim)))
    if not (largest > 0).all():
        raise CannotBe(NOT_ALL_TRUE)
    return table / largest, largest


def _joined(before: Table, later: Table, start: Table) -> Table:
    """Two tables multiplied, and added up over all that is explained or not."""
    import numpy as np

    if not start.ndim:
        return np.asarray(np.vdot(before, later))
    return np.asarray((before * later).sum(axis=tuple(range(before.ndim - start.ndim))))


def _alone(posed: Posed, causes: tuple[str, ...], start: Table) -> dict[str, Table]:
    """The chances of causes that nothing ties to others."""
    import numpy as np

    there = np.asarray([posed.there[cause] * start for cause in causes])
    either = there + np.asarray([posed.away[cause] * start for cause in causes])
    if not (either > 0).all():
        no = next(cause for cause, each in zip(causes, either, strict=True) if not np.all(each > 0))
        raise CannotBe(f"{no} is called confirmed, and a sign that it always brings is not seen")
    return dict(zip(causes, there / either, strict=True))
