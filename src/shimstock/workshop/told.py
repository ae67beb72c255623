"""What is written down about one place: notes, bags, and the diary's entries."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from shimstock.workshop.models import Bag, DiaryEntry, Machine, Note


@dataclass(frozen=True)
class Shelf:
    """A shelf and the bags on it; name: "" for bags that lie on none yet."""

    name: str
    bags: tuple[Bag, ...]

    def only(self, number: str) -> Shelf:
        """The same shelf with only the bags whose number, or what they hold, has a text in it."""
        wanted = number.casefold()
        held = (bag for bag in self.bags if wanted in f"{bag.number} {bag.holds}".casefold())
        return Shelf(self.name, tuple(held))


def notes_on(machine: Machine, place: str) -> list[Note]:
    """Notes on a place, the latest first."""
    return list(machine.notes_written.filter(about=place, withdrawn=False).order_by("-pk"))


def bags_of(machine: Machine, place: str) -> list[Bag]:
    """Bags in use that hold what came off at a place."""
    return list(machine.bags.filter(about=place, withdrawn=False))


def told_of(machine: Machine, place: str, most: int) -> list[DiaryEntry]:
    """The last entries of the diary about a place, a note on it or a photo of it, latest first."""
    from django.db.models import Q, TextField
    from django.db.models.functions import Cast

    entries = machine.diary.alias(said=Cast("places", TextField()))
    itself = Q(said__contains=f'{place}"')  # a list of quoted texts, as it is stored
    held = entries.filter(itself | Q(said__contains=f"photo:{place}:"))
    return _named_exactly(held.defer("before", "after", "sent").order_by("-pk"), place, most)


def opening_of(machine: Machine, place: str) -> int | None:
    """The entry by which a joint came to stand open, of those that are not undone."""
    undone = set()
    for entry in told_of(machine, place, most=machine.diary.count()):
        if entry.pk in undone:
            continue
        if entry.undoes_id is not None:
            undone.add(entry.undoes_id)
        elif entry.act == "open":
            return entry.pk
    return None


def _named_exactly(entries: Iterable[DiaryEntry], place: str, most: int) -> list[DiaryEntry]:
    """Only entries that name the place itself: text alone may also end like another's name."""
    names, photo = {place, f"note:{place}"}, f"photo:{place}:"
    return [
        entry
        for entry in entries
        if any(each in names or each.startswith(photo) for each in entry.places)
    ][:most]


def shelves_of(machine: Machine) -> list[Shelf]:
    """Every bag in use by its shelf, by name; last those that lie on no shelf yet."""
    by_shelf: dict[str, list[Bag]] = {}
    for bag in sorted(machine.bags.filter(withdrawn=False), key=_in_order):
        by_shelf.setdefault(bag.shelf, []).append(bag)
    names = sorted(by_shelf, key=lambda name: (not name, name.casefold()))
    return [Shelf(name, tuple(by_shelf[name])) for name in names]


def _in_order(bag: Bag) -> tuple[int, str]:
    """Bags by their numbers: 2 before 12, 12 before 12 a."""
    figures = re.match(r"\d+", bag.number)
    return (int(figures[0]) if figures else 0, bag.number)
