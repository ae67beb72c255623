"""A machine's diary as people read it: what was done, by whom, where, and what was undone."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from django.db.models import IntegerField, Q, QuerySet, TextField, Value
from django.db.models.functions import Cast
from django.utils.timezone import localdate

from shimstock.workshop.changes import changes_told, places_of
from shimstock.workshop.models import DiaryEntry, Machine
from shimstock.workshop.wording import called

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Cause, Figure, Joint, Part, Sign

A_PAGE = 30
"""How many entries are read at a time."""

NOTHING = Value(None, output_field=IntegerField())
Undoing = tuple[int, int | None, str]
"""Number of an entry, of the one that it undoes, and who wrote it."""

INTO_THE_NIGHT = timedelta(hours=4)
"""Work after midnight belongs to the evening on which it began."""


@dataclass(frozen=True)
class Told:
    """An entry with what it changed.

    undone_by: the number of the entry that undid it and still stands; None for none.
    changes: a plain line each. places: what it is about. photos: numbers of the pictures it kept.
    """

    entry: DiaryEntry
    undone_by: int | None
    changes: tuple[str, ...]
    places: tuple[str, ...]
    photos: tuple[int, ...]

    @property
    def says(self) -> str:
        """What was done in a sentence, and by which entry it was undone."""
        undone = f" (undone by {self.undone_by})" if self.undone_by else ""
        return f"{self.entry.says}{undone}"

    @property
    def can_be_undone(self) -> bool:
        """Whether there is something to put back; a later act may stand against it all the same."""
        return bool(self.entry.touched) and self.undone_by is None


@dataclass(frozen=True)
class Wanted:
    """Which entries are wanted.

    who: the person. about: a place, such as joint:timing-cover. words: in what was done, or naming
    what it was done to. before: only entries older than the one of this number.
    """

    who: str = ""
    about: str = ""
    words: str = ""
    before: int | None = None


@dataclass(frozen=True)
class Found:
    """The entries that were wanted, newest first, and everybody who wrote into the diary."""

    entries: list[Told]
    everybody: list[str]


def told(machine: Machine, book: Book, wanted: Wanted, count: int = A_PAGE) -> Found:
    """The newest entries that are wanted, newest first; each with what it changed."""
    entries = list(_wanted(machine, book, wanted).defer("sent").order_by("-pk")[:count])
    undoings = _undoings(machine, entries)
    names = machine.diary.values_list(NOTHING, NOTHING, "who").distinct()
    found = list(names.order_by().union(undoings, all=True))  # in one SELECT, and few rows
    undone = undone_by(sorted((row[:2] for row in found if row[0]), reverse=True))
    return Found(_with_changes(entries, undone), sorted({who for *_, who in found}))


def newest(machine: Machine, count: int) -> list[Told]:
    """The newest entries of a machine, newest first."""
    entries = list(machine.diary.defer("sent").order_by("-pk")[:count])
    undoings = _undoings(machine, entries).order_by("-pk")
    return _with_changes(entries, undone_by(row[:2] for row in undoings))


def _with_changes(entries: list[DiaryEntry], undone: Mapping[int, int]) -> list[Told]:
    places = places_of(entries)
    return [
        Told(each, undone.get(each.pk), changes_told(each, places), _about(each), _photos(each))
        for each in entries
    ]


def _undoings(machine: Machine, entries: list[DiaryEntry]) -> QuerySet[DiaryEntry, Undoing]:
    """What was undone since the oldest of some entries: all that can have undone one of them.

    A diary is long, and what is looked at is mostly at its end.
    """
    oldest = min((each.pk for each in entries), default=0)
    later = machine.diary.filter(pk__gt=oldest, undoes__isnull=False).order_by()
    return later.values_list("pk", "undoes_id", "who")


def undone_by(entries: Iterable[tuple[int, int | None]]) -> dict[int, int]:
    """The entries that are undone, each with the entry that undid it and still stands.

    entries: number and what it undoes, latest first.
    """
    found: dict[int, int] = {}
    for pk, undoes in entries:
        if undoes is not None and pk not in found:  # else it was undone itself: it undoes nothing
            found[undoes] = pk
    return found


def evening(at: datetime) -> date:
    """The day on whose evening something was done."""
    return localdate(at - INTO_THE_NIGHT)


def by_evening(entries: Iterable[Told]) -> list[tuple[date, list[Told]]]:
    """Entries under the evening on which they were done, in the order given."""
    evenings: dict[date, list[Told]] = {}
    for each in entries:
        evenings.setdefault(evening(each.entry.at), []).append(each)
    return list(evenings.items())


def place_in_short(book: Book, place: str) -> str:
    """A place by its mark, or by its name where it has none; "" for one that follows from others.

    Such as "J52", or "F001, left, as found".
    """
    kind, _, which = place.partition(":")
    key, _, rest = which.partition(":")
    match kind:
        case "joint" if key in book.joints:
            return _mark(book.joints[key])
        case "piece" if key in book.parts:
            return called(_mark(book.parts[key]), rest)
        case "reading" if key in book.measures:
            piece, _, stage = rest.rpartition(":")
            return f"{called(_mark(book.measures[key]), piece)}, {stage}"
        case "gate" if key in book.gates:
            return book.gates[key].name or key
        case "answer":
            return "Gates"
        case "bag":
            return f"Bag {which}"
        case "machine":
            return "Book"
        case "search":
            return called(f"Search {key}", _thing_told(book, rest))
        case "found" if key in book.causes:
            return _mark(book.causes[key])
        case "note":
            return "Machine" if which == "machine" else place_in_short(book, which)
    return ""


def _thing_told(book: Book, about: str) -> str:
    """The sign or cause of which something was said in a search, by its mark or name."""
    kind, _, key = about.partition(":")
    things: Mapping[str, Sign | Cause] = book.signs if kind == "sign" else book.causes
    return _mark(things[key]) if key in things else ""


def _mark(thing: Joint | Part | Figure | Sign | Cause) -> str:
    return thing.mark or thing.name


def _wanted(machine: Machine, book: Book, wanted: Wanted) -> QuerySet[DiaryEntry]:
    entries = machine.diary.annotate(places_text=Cast("places", TextField()))
    if wanted.who:
        entries = entries.filter(who=wanted.who)
    if wanted.before is not None:
        entries = entries.filter(pk__lt=wanted.before)
    if wanted.about:
        entries = entries.filter(_touching(wanted.about))
    if words := wanted.words.split():
        said = Q()
        for word in words:
            said &= Q(says__icontains=word)
        for key in _keys_called(book, [word.lower() for word in words]):
            said |= Q(places_text__contains=f':{key}"') | Q(places_text__contains=f":{key}:")
        entries = entries.filter(said)
    return entries


def _touching(place: str) -> Q:
    """Entries about a place, or about all pieces or readings of it."""
    exact = Q(places_text__contains=f'"{place}"') | Q(places_text__contains=f'"note:{place}"')
    photo = Q(places_text__contains=f'"photo:{place}:')
    return exact | photo | Q(places_text__contains=f'"{place.rstrip(":")}:')


def _keys_called(book: Book, words: list[str]) -> Iterator[str]:
    """Keys of what is called so in the book, by key, mark or name."""
    for things in (book.joints, book.parts, book.measures, book.signs, book.causes):
        for key, thing in things.items():
            called = f"{key} {thing.mark or ''} {thing.name}".lower()
            if all(word in called for word in words):
                yield key


def _about(entry: DiaryEntry) -> tuple[str, ...]:
    """Places that it is about, without those that follow from others."""
    return tuple(place for place in entry.places if not place.startswith("verdict:"))


def _photos(entry: DiaryEntry) -> tuple[int, ...]:
    kept = [name for name in entry.touched if name.startswith("photo:")]
    return tuple(int(name.partition(":")[2]) for name in kept if "file" in entry.after[name])
