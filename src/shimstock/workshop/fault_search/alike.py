"""Searches on one machine that are about the same, so that nobody goes two ways at once."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.workshop.fault_search.pick import stems
from shimstock.workshop.fault_search.words import NOT_SEEN, SIGN

if TYPE_CHECKING:
    from collections.abc import Iterable

    from shimstock.workshop.models import FaultSearch


def like_it(search: FaultSearch, searches: Iterable[FaultSearch]) -> FaultSearch | None:
    """An earlier search that goes on, with the same words or the same signs seen; None for none.

    searches: all those of the machine, the latest first.
    """
    others = [each for each in searches if not each.ended and each.number < search.number]
    if not others:
        return None
    signs = _signs_seen(search)
    here = signs.get(search.number)
    for each in others:
        same_words = search.about and stems(each.about) == stems(search.about)
        if same_words or (here and signs.get(each.number) == here):
            return each
    return None


def _signs_seen(search: FaultSearch) -> dict[int, set[str]]:
    """The signs that were seen, or read, by the number of the search."""
    said = search.machine.said_in_searches.filter(withdrawn=False, about__startswith=SIGN)
    found: dict[int, set[str]] = {}
    for number, about in said.exclude(said=NOT_SEEN).values_list("search", "about"):
        found.setdefault(number, set()).add(about)
    return found
