"""What to do about the readings of a machine, kind by kind."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.measure.remedy import Remedy
    from shimstock.workshop.looking import Seen

USE_AGAIN = "use again"
TO_DO = {
    "use again": "Use again",
    "machine": "Machine",
    "sleeve or new part": "Sleeve or replace",
    "not a pair": "Not a pair",
    "put right": "Put right or replace",
    "set": "Set",
    "measure": "Measure first",
    "measure again": "Measure again",
}
"""The kinds of remedy in the order shown, and the heading over each."""


def remedies_now(seen: Seen) -> list[Remedy]:
    """What to do, but for the pieces that were found fit and are not the ones to be fitted now."""
    return [each for each in seen.measured[1] if not _gone(seen, each)]


def by_kind(remedies: Iterable[Remedy]) -> dict[str, list[Remedy]]:
    """Remedies under the heading of their kind; each that says the same of the same only once."""
    found = {(str(each.what), each.says, each.because): each for each in remedies}
    headed = {
        heading: [each for (what, _, _), each in found.items() if what == kind]
        for kind, heading in TO_DO.items()
    }
    return {heading: held for heading, held in headed.items() if held}


def _gone(seen: Seen, remedy: Remedy) -> bool:
    from shimstock.trade.reach.whereabouts import AWAY

    return str(remedy.what) == USE_AGAIN and all(
        seen.now.piece(*key).word in AWAY for key in remedy.pieces
    )
