"""The searches for faults on a machine, and the trail of one, as they are listed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table
from shimstock.workshop.looking import kept

if TYPE_CHECKING:
    from shimstock.workshop.fault_search.trail import Step
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import DiaryEntry, FaultSearch

NONE = "No search yet; shimstock fault MACHINE --seen SIGN --keep begins one."

MOST = 1000
"""More entries of one search are not shown."""


def searches_answer(seen: Seen, number: int | None, entry: DiaryEntry | None) -> Answer:
    """All searches of a machine, and the trail of the one that is named. Raises NotFound."""
    from shimstock.workshop.fault_search.trail import trail
    from shimstock.workshop.fault_search.words import find_search, searches_of

    rows = searches_of(seen.row)
    row = find_search(seen.row, number) if number is not None else None
    steps = trail(seen.row, row.number, MOST)[::-1] if row else []
    shown: list[Shown] = [kept_line(entry)] if entry else []
    shown += [Heading(f"Searches for faults on {seen.row.name}"), *_listed(rows)]
    if row:
        shown += [Heading(f"Search {row.number}"), _trail_table(steps)]
    data = {
        "searches": [_data(each) for each in rows],
        "trail": [kept(each.entry) | {"undone": each.undone} for each in steps],
        "entry": kept(entry) if entry else None,
    }
    return Answer(data, shown)


def _data(row: FaultSearch) -> dict[str, Any]:
    from django.utils.timezone import localtime

    return {
        "number": row.number,
        "about": row.about,
        "ended": row.ended,
        "by": row.by,
        "at": localtime(row.at).isoformat(timespec="seconds"),
    }


def _listed(rows: list[FaultSearch]) -> list[Shown]:
    from django.utils.timezone import localtime

    lines = [
        (str(row.number), f"{localtime(row.at):%d %b %Y}", row.by, row.ended or "goes on",
         row.about or "-")
        for row in rows
    ]  # fmt: skip
    columns = ("search", "begun", "by", "stands", "about")
    return [Table(columns, lines, frozenset({"search"}))] if lines else [NONE]


def _trail_table(steps: list[Step]) -> Table:
    from django.utils.timezone import localtime

    rows = [
        (str(each.entry.pk), f"{localtime(each.entry.at):%d %b %Y}", each.entry.who,
         f"{each.entry.says}{' (undone)' if each.undone else ''}")
        for each in steps
    ]  # fmt: skip
    return Table(("entry", "on", "who", "what"), rows, frozenset({"entry"}))
