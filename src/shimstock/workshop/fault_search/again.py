"""A search that is written down, looked at again: worked out anew only where something changed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.workshop.fault_search.counts import counts
from shimstock.workshop.fault_search.view import see_search

if TYPE_CHECKING:
    from shimstock.workshop.fault_search.view import SearchSeen
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import FaultSearch


def look_again(seen: Seen, row: FaultSearch) -> SearchSeen:
    """Look at a search of a machine, as `see_search` does.

    Kept with the machine as it stands, since every change there makes an entry in its diary. Counts
    also come from other machines and workshops, so they are compared.
    """
    kept = seen.searched.get(row.number)
    if kept is None or kept.counted != counts():
        kept = seen.searched[row.number] = see_search(seen, row)
    return kept
