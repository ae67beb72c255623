"""Undoing: a further act that puts back what an earlier one changed."""

from collections.abc import Iterable
from datetime import datetime

from django.db.models import QuerySet

from shimstock.workshop.acts.fault_counts import check_labels_apart
from shimstock.workshop.acts.machines import check_all_kept
from shimstock.workshop.books import book_of
from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.places import MACHINE
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.rows import put_back, row_named


def undo(*, entry_id: int, who: str, at: datetime | None = None) -> DiaryEntry:
    """Put every row that an act touched back as it was before; what the act made is withdrawn.

    An undo is an act itself and can be undone.
    Raises NotFound for an unknown entry; Refused where it is undone already, where a later act that
    still stands is about the same thing or rests on it, where a book would come back that does not
    know what is written down since, or counts whose label is another workshop's by now.
    """
    entry = DiaryEntry.objects.select_related("machine").filter(pk=entry_id).first()
    if entry is None:
        raise NotFound("entry in the diary", str(entry_id), [])
    with writing("undo", who=who, machine=entry.machine, at=at, undoes=entry) as pen:
        if (reason := why_not_undo(entry)) is not None:
            raise Refused([reason])
        _put_all_back(pen, entry)
        if entry.machine is not None and MACHINE in entry.places:
            entry.machine.refresh_from_db()
            check_all_kept(entry.machine, book_of(entry.machine))
        if entry.machine is None:
            check_labels_apart()
        pen.rests_on.update(entry.rests_on)
        pen.says = f"Undid {entry.pk}: {entry.says}"
    return pen.entry


def why_not_undo(entry: DiaryEntry) -> str | None:
    """Say why an act cannot be undone; None where it can."""
    if not entry.touched:
        return f"Entry {entry.pk} changed nothing, so there is nothing to undo."
    if (other := in_the_way(entry)) is None:
        return None
    if other.undoes_id == entry.pk:
        return f"Entry {entry.pk} is undone already, by entry {other.pk}."
    return (
        f"A later act {_collision(entry, other)}: entry {other.pk}, {other.who}, “{other.says}” "
        f"Undo that one first: undo {other.pk}."
    )


def in_the_way(entry: DiaryEntry) -> DiaryEntry | None:
    """The later act that must be undone before this one; or the one by which it is undone."""
    if not entry.touched:
        return None
    for other in _still_standing(list(_later(entry))):
        if other.undoes_id == entry.pk or _collision(entry, other) is not None:
            return other
    return None


def _later(entry: DiaryEntry) -> "QuerySet[DiaryEntry]":
    later = DiaryEntry.objects.filter(machine=entry.machine_id, pk__gt=entry.pk)
    return later.defer("before", "after").order_by("pk")


def _still_standing(later: list[DiaryEntry]) -> Iterable[DiaryEntry]:
    """The acts that count, latest first: an act and what undid it cancel each other out."""
    cancelled: set[int] = set()
    known = {other.pk for other in later}
    for other in reversed(later):
        if other.pk in cancelled:
            continue
        if other.undoes_id in known:
            cancelled.add(other.undoes_id)
            continue
        yield other


def _collision(entry: DiaryEntry, other: DiaryEntry) -> str | None:
    """How a later act stands in the way of undoing this one; None where it does not."""
    if not other.touched:
        return None
    places = set(entry.places)
    if places.intersection(other.places):
        return "is about the same thing"
    if entry.act == "add machine" or places.intersection(other.rests_on):
        return "rests on it"
    if entry.undoes_id is not None and set(entry.rests_on).intersection(other.places):
        return "changed what it rests on"
    return None


def _put_all_back(pen: Pen, entry: DiaryEntry) -> None:
    """Put rows back, the last one touched first, so that no two count in one place at a time."""
    for name in reversed(entry.touched):
        row = row_named(name)
        put_back(row, entry.before[name])
        pen.save(row)
