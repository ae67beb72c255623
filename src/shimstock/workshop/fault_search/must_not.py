"""What must not be run or turned: by what a search is told, and by what others left standing."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.faults.forbidden import Forbidden
    from shimstock.trade.faults.network import Told
    from shimstock.trade.machine.state import MachineNow


def must_not_run(now: MachineNow, search: int | None, told: Told) -> tuple[Forbidden, ...]:
    """What forbids the engine to run, or to turn; what forbids turning comes first.

    search: number of the search that is told of; None for one that is not written down. told: what
    it knows. What another search left standing holds until it is settled there, or its cause is put
    right: that this one says otherwise of a sign takes nothing back.
    """
    from shimstock.trade.faults.forbidden import forbidden
    from shimstock.trade.faults.network import Told

    left = {each.number: each for each in now.searches}
    mine = left.pop(search, None) if search is not None else None
    seen = dict.fromkeys(mine.seen if mine else (), True)  # a number that cannot be read, too
    found = list(forbidden(now.book, Told({**seen, **told.findings}, told.causes)))
    for number, other in left.items():
        causes = dict.fromkeys(other.cleared, False) | dict.fromkeys(other.found, True)
        there = forbidden(now.book, Told(dict.fromkeys(other.seen, True), causes))
        known = {each.about for each in found}
        found += [replace(each, search=number) for each in there if each.about not in known]
    return tuple(sorted(found, key=lambda each: each.says.engine != "turning"))
