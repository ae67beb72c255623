"""Who said what, and when, in a search."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from shimstock.workshop.places import search_place

if TYPE_CHECKING:
    from shimstock.workshop.models import DiaryEntry, Machine


@dataclass(frozen=True)
class Step:
    """An entry of the diary about a search. undone: a later entry undid it and still stands."""

    entry: DiaryEntry
    undone: bool

    @property
    def can_be_undone(self) -> bool:
        """Whether there is something to put back; a later act may stand against it all the same."""
        return bool(self.entry.touched) and not self.undone


def trail(machine: Machine, number: int, most: int) -> list[Step]:
    """The last entries about a search, the latest first; in one SELECT.

    An undoing is about the same places as what it undid, so it is among them.
    """
    from django.db.models import Q, TextField
    from django.db.models.functions import Cast

    place = search_place(number)
    entries = machine.diary.alias(said=Cast("places", TextField()))
    about = Q(said__contains=f'"{place}"') | Q(said__contains=f'"{place}:')
    found = list(entries.filter(about).defer("before", "after", "sent").order_by("-pk"))
    undone: set[int | None] = set()
    steps = []
    for entry in found:
        gone = entry.pk in undone
        if not gone:  # else it was undone itself: it undoes nothing
            undone.add(entry.undoes_id)
        steps.append(Step(entry, gone))
    return steps[:most]
