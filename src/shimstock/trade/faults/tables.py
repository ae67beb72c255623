"""Tables over which open findings are explained already, carried forwards and backwards.

A table has one axis of two for each open finding: not explained yet, explained. Everything in it is
positive, so that nothing cancels, however many findings were seen.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from shimstock.trade.faults.plan import Closes, Opens, Step, Takes
from shimstock.trade.faults.posed import Posed

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Table = NDArray[np.float64]


def forwards(table: Table, step: Opens | Closes) -> Table:
    """What the steps before a finding is opened or closed come to, after it."""
    import numpy as np

    if isinstance(step, Opens):
        return np.stack([table * (1 - step.leak), table * step.leak], axis=step.axis)
    no, yes = halves(table, step.axis)
    return np.asarray(step.if_not * no + step.if_so * yes)


def taken(table: Table, brought: Table, step: Takes, posed: Posed) -> Table:
    """A table after a cause that is there or not; brought: the table if it is there."""
    return posed.there[step.cause] * brought + posed.away[step.cause] * table


def backwards(after: Table, step: Step, posed: Posed) -> Table:
    """What the steps after one come to, before it."""
    import numpy as np

    if isinstance(step, Opens):
        no, yes = halves(after, step.axis)
        return np.asarray((1 - step.leak) * no + step.leak * yes)
    if isinstance(step, Closes):
        return np.stack([step.if_not * after, step.if_so * after], axis=step.axis)
    return posed.there[step.cause] * if_there(after, step) + posed.away[step.cause] * after


def brought_on(table: Table, step: Takes) -> Table:
    """A table once a cause is there: each finding it is tied to may be explained by it."""
    for axis, weight in step.explains:
        table = table.copy()
        no, yes = halves(table, axis)
        yes += weight * no
        no *= 1 - weight
    for axis in step.fills:
        table = table.copy()
        no, yes = halves(table, axis)
        yes[...] = no
        no[...] = 0
    return table


def if_there(after: Table, step: Takes) -> Table:
    """What the later steps come to if a cause is there, seen from before it."""
    return ladder(after, step)[0]


def ladder(after: Table, step: Takes) -> Sequence[Table]:
    """The same, rung by rung: before the first finding is drawn, before the second, …, after."""
    rungs = [after]
    for axis in reversed(step.fills):
        table = after.copy()
        no, yes = halves(table, axis)
        no[...] = yes
        yes[...] = 0
        after = table
        rungs[0] = table
    for axis, weight in reversed(step.explains):
        table = after.copy()
        no, yes = halves(table, axis)
        no *= 1 - weight
        no += weight * yes
        after = table
        rungs.insert(0, table)
    return rungs


def halves(table: Table, axis: int) -> tuple[Table, Table]:
    """Views of a table where the finding on an axis is not explained, and where it is."""
    outer = (slice(None),) * axis
    no: Any = (*outer, 0, ...)  # with the dots a single number is a view too
    yes: Any = (*outer, 1, ...)
    return table[no], table[yes]
