"""Counts of faults found, here and elsewhere: shown, written to a file and taken in from one."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from shimstock.faces.cli.shown import Answer, Heading, Shown, Table
from shimstock.workshop.looking import kept, see_all

if TYPE_CHECKING:
    from shimstock.faces.cli.command import Asked
    from shimstock.workshop.models import DiaryEntry

UNSAID = "its file did not say whose it is"
NONE = "Nothing was found and put right yet; shimstock found writes it down."


def counts_answer(entry: DiaryEntry | None, shown: list[Shown], file: str | None = None) -> Answer:
    """What was found in this workshop, and what was imported."""
    from shimstock.workshop.fault_search.counts import imported, own_counts

    own, came = own_counts(), imported()
    names = {key: each.name for seen in see_all() for key, each in seen.book.causes.items()}
    rows = [
        (names.get(key, key), str(each.confirmed), str(each.looked))
        for key, each in sorted(own.items())
    ]
    labels = [
        (
            each.label,
            str(each.causes),
            str(each.confirmed),
            str(each.looked),
            each.by,
            "" if each.known else UNSAID,
        )
        for each in came
    ]
    numbers = frozenset({"causes", "found", "looked at"})
    listed: list[Shown] = [Heading("Found in this workshop")]
    listed += [Table(("cause", "found", "looked at"), rows, numbers)] if rows else [NONE]
    if labels:
        columns = ("from", "causes", "found", "looked at", "taken in by", "")
        listed += [Heading("Imported"), Table(columns, labels, numbers)]
    data = {
        "own": {key: {"confirmed": c.confirmed, "looked": c.looked} for key, c in own.items()},
        "imported": [
            {"label": each.label, "causes": each.causes, "confirmed": each.confirmed,
             "looked": each.looked, "by": each.by, "known": each.known}
            for each in came
        ],
        "file": file,
        "entry": kept(entry) if entry else None,
    }  # fmt: skip
    return Answer(data, [*shown, *listed])


def write_file(file: str) -> None:
    """Write the counts of this workshop to a file. Raises FileExistsError."""
    from shimstock.workshop.fault_search.counts import export_counts

    with Path(file).open("x", encoding="utf-8") as out:
        out.write(export_counts())


def import_file(asked: Asked, file: str, *, label: str, replace: bool, meant: bool) -> DiaryEntry:
    """Take in another workshop's counts.

    Raises OSError, UnicodeDecodeError, Refused, HardlyMeant.
    """
    from shimstock.workshop import acts
    from shimstock.workshop.counts_file import LONGEST

    with Path(file).open(encoding="utf-8") as counts:
        text = counts.read(LONGEST + 1)
    return acts.import_counts(label=label, text=text, replace=replace, meant=meant, who=asked.who)
