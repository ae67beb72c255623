"""What an act changed, row by row and column by column, as the diary holds it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.rows import row_named

IN_THE_PLACE = frozenset(
    {"machine_id", "joint", "part", "piece", "figure", "stage", "point", "gate"}
)
"""Columns that the name of the place tells already."""

COUNTS = frozenset({"withdrawn", "current"})
"""Columns that say whether a row counts; of a new one its other columns say so."""

NONE = "none"

LONG = 120
"""Letters of a value that are still worth a line; of a longer one only its column is named."""


def changes_told(entry: DiaryEntry) -> tuple[str, ...]:
    """Every change of an act, a plain line each; what was empty and stays so is left out.

    Such as "joint timing-cover: word open -> sealed".
    """
    return tuple(
        f"{_place(name)}: {change}"
        for name in entry.touched
        for change in _changes(entry.before[name], entry.after[name])
    )


def _place(row: str) -> str:
    kind, _, which = row_named(row).place.partition(":")
    return f"{kind} {', '.join(filter(None, which.split(':')))}".strip()


def _changes(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    is_new = before.keys() != after.keys()
    for column, value in after.items():
        called, new = column.replace("_", " "), _said(value)
        old = _said(before[column]) if column in before else None
        if column in IN_THE_PLACE or (is_new and column in COUNTS):
            continue
        if old is None and (value is False or new == NONE):
            continue
        if max(len(new), len(old or "")) > LONG:
            yield f"{called} {'written' if old is None else 'changed'}"
        else:
            yield f"{called} {new}" if old is None else f"{called} {old} -> {new}"


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
