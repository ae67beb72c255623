"""What an act changed, row by row and column by column, as the diary holds it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.places import MACHINE
from shimstock.workshop.rows import put_back, row_like, row_name, rows_numbered

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book

IN_THE_PLACE = frozenset(
    {"machine_id", "joint", "part", "piece", "figure", "stage", "point", "gate"}
)
"""Columns that the name of the place tells already."""

COUNTS = frozenset({"withdrawn", "current"})
"""Columns that say whether a row counts; of a new one its other columns say so."""

COUNTING = {
    ("withdrawn", True): "is withdrawn",
    ("withdrawn", False): "counts again",
    ("superseded", True): "the earlier one counts no more",
    ("superseded", False): "the earlier one counts again",
    ("current", True): "counts again",
    ("current", False): "counts no more",
}
"""Columns that say whether a row counts, in words."""

IN_WORDS = {
    "since": "stands so since",
    "bolts_out": "bolts that came off",
    "bolts_ready": "bolts counted in the bag",
    "thickness_found": "thickness of the old gasket",
    "leak_checked_on": "found dry on",
    "dry_chalked_on": "chalk-dry on",
}
"""What a person calls a column; any other is called by its own name."""

NONE = "none"

LONG = 120
"""Letters of a value that are still worth a line; of a longer one only its column is named."""


def changes_told(entry: DiaryEntry, places: Mapping[str, str] | None = None) -> tuple[str, ...]:
    """Every change of an act, a plain line each; what was empty and stays so is left out.

    Such as "joint timing-cover: word open -> sealed".
    places: what the rows are about, where that is looked up already for many entries at once.
    """
    known = places_of([entry]) if places is None else places
    return tuple(
        f"{_named(known[name])}: {change}"
        for name in entry.touched
        for change in _changes(entry.before[name], entry.after[name])
    )


def undoing_told(entry: DiaryEntry, book: Book) -> tuple[str, ...]:
    """Everything that undoing an act would put back, a plain line each.

    Such as "Timing cover to case (J36): open again, no longer sealed".
    """
    places = places_of([entry])
    return tuple(
        f"{_called(book, places[name])}: {change}"
        for name in entry.touched
        for change in _put_back(entry.before[name], entry.after[name])
    )


def _put_back(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    if before.keys() != after.keys() and COUNTS.intersection(before):
        yield "counts no more"
        return
    back = {column: before[column] for column in after if column in before}
    yield from _changes(after, back, _again)


def places_of(entries: Iterable[DiaryEntry]) -> dict[str, str]:
    """What every row that some acts touched is about, by the row's name.

    What an act wrote anew says so itself, and so does an act that touched one row; the rest is
    looked up, a SELECT for each table.
    """
    places: dict[str, str] = {}
    unknown: dict[str, list[int]] = {}
    for entry in entries:
        for name in entry.touched:
            place = _place_written(name, entry.after[name])
            if place is None and len(entry.touched) == 1:
                place = entry.places[0]
            if place is not None:
                places[name] = place
            else:
                table, _, number = name.partition(":")
                unknown.setdefault(table, []).append(int(number))
    for table, numbers in unknown.items():
        for row in rows_numbered(table, numbers):
            places[row_name(row)] = row.place
    return places


def _place_written(name: str, after: Mapping[str, Any]) -> str | None:
    """What a row is about, where the act wrote all that says so; None where it did not."""
    if name.startswith("machine:"):
        return MACHINE
    if "machine_id" not in after:
        return None
    row = row_like(name)
    put_back(row, dict(after))
    return row.place


def _named(place: str) -> str:
    kind, _, which = place.partition(":")
    return f"{kind} {', '.join(filter(None, which.split(':')))}".strip()


def _called(book: Book, place: str) -> str:
    """What a person calls a place; by its kind where that is nothing in the book."""
    from shimstock.workshop.place_typed import place_called

    called = place_called(book, place)
    return _named(place) if called == place else called


def _then(column: str, old: str, new: str) -> str:
    return f"{column.replace('_', ' ')} {old} -> {new}"


def _again(column: str, old: str, new: str) -> str:
    """What stands again; the state itself needs no name before it."""
    called = "" if column == "word" else f"{IN_WORDS.get(column, column.replace('_', ' '))} "
    return f"{called}{new} again, no longer {old}"


def _changes(
    before: Mapping[str, Any],
    after: Mapping[str, Any],
    say: Callable[[str, str, str], str] = _then,
) -> Iterator[str]:
    is_new = before.keys() != after.keys()
    for column, value in after.items():
        called, new = column.replace("_", " "), _said(value)
        old = _said(before[column]) if column in before else None
        if column in IN_THE_PLACE or (is_new and column in COUNTS):
            continue
        if old is None and (value is False or new == NONE):
            continue
        if old is not None and isinstance(value, bool) and (column, value) in COUNTING:
            yield COUNTING[column, value]
        elif max(len(new), len(old or "")) > LONG:
            yield f"{called} {'written' if old is None else 'changed'}"
        else:
            yield f"{called} {new}" if old is None else say(column, old, new)


def _said(value: Any) -> str:
    match value:
        case None | "" | []:
            return NONE
        case bool():
            return "yes" if value else "no"
        case list():
            return ", ".join(_said(each) for each in value)
        case {"name": str(name)}:  # an instrument
            return name
        case dict():
            return ", ".join(f"{key} {_said(each)}" for key, each in value.items()) or NONE
    return str(value)
