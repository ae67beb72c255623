"""A shed of fifty machines with 100,000 readings and 10,000 photos, copied from the demo's two.

Each machine has a book text of its own, so that no two share what is remembered of a book; its
states, readings, verdicts and diary are those of a demo machine, and further readings of the same
figures stand behind those that count, each with its verdict and its entry in the diary.
"""

import json
import random
import sqlite3
from collections.abc import Callable, Iterator
from itertools import count
from pathlib import Path
from typing import Any

MACHINES, READINGS, PHOTOS = 50, 100_000, 10_000
APART = 1_000_000
"""Between the numbers of a row and of its copy in the next machine."""

OF_A_MACHINE = (
    "jointstate",
    "piecestate",
    "answerrow",
    "gatepass",
    "readingrow",
    "verdictrow",
    "diaryentry",
    "faultsearch",
    "faultsaid",
)
Row = dict[str, Any]


def grow(database: Path, said: Callable[[str], None] = print) -> list[str]:
    """Grow the demo's database to the whole; returns the short names of all machines."""
    rows = sqlite3.connect(database)
    rows.row_factory = sqlite3.Row
    rows.execute("PRAGMA synchronous=OFF")
    demo = [dict(row) for row in rows.execute("SELECT * FROM workshop_machine ORDER BY id")]
    for number in range(len(demo), MACHINES):
        _copy_machine(rows, demo[number % len(demo)], number)
    rows.commit()
    said(f"{MACHINES} machines")
    machines = list(rows.execute("SELECT id, slug FROM workshop_machine ORDER BY id"))
    for number, machine in enumerate(machines):
        _read_more(rows, machine["id"], READINGS // MACHINES, _numbers(number))
    rows.commit()
    said(f"{rows.execute('SELECT count(*) FROM workshop_readingrow').fetchone()[0]:,} readings")
    rows.execute("ANALYZE")
    rows.commit()
    rows.close()
    return [machine["slug"] for machine in machines]


def _copy_machine(rows: sqlite3.Connection, machine: Row, number: int) -> None:
    shift = number * APART
    copy = {
        **machine,
        "id": machine["id"] + shift,
        "slug": f"{machine['slug']}-{number}",
        "name": f"{machine['name']}, number {number}",
        "book_text": f"{machine['book_text']}\n# the copy of machine {number}\n",
    }
    _put(rows, "machine", copy)
    for table in OF_A_MACHINE:
        found = rows.execute(
            f"SELECT * FROM workshop_{table} WHERE machine_id = ? ORDER BY id", [machine["id"]]
        )
        for row in found.fetchall():
            _put(rows, table, _shifted(dict(row), shift, copy["id"]))


def _shifted(row: Row, shift: int, machine: int) -> Row:
    """A row as it stands in a copy: with numbers of its own, also where the diary names rows."""
    row = {**row, "id": row["id"] + shift, "machine_id": machine}
    if "touched" in row:
        row["touched"] = json.dumps([_named(each, shift) for each in json.loads(row["touched"])])
        for side in ("before", "after"):
            values = json.loads(row[side])
            row[side] = json.dumps({_named(each, shift): of for each, of in values.items()})
        row["undoes_id"] = row["undoes_id"] and row["undoes_id"] + shift
        row["client_key"] = None
    return row


def _named(row: str, shift: int) -> str:
    table, _, number = row.partition(":")
    return f"{table}:{int(number) + shift}"


def _read_more(rows: sqlite3.Connection, machine: int, wanted: int, numbers: Iterator[int]) -> None:
    """Put older readings of the same figures behind those that count."""
    of = "WHERE machine_id = ? ORDER BY id"
    readings = [dict(r) for r in rows.execute(f"SELECT * FROM workshop_readingrow {of}", [machine])]
    verdicts = {
        (r["figure"], r["piece"], r["stage"]): dict(r)
        for r in rows.execute(f"SELECT * FROM workshop_verdictrow {of}", [machine])
    }
    entry = dict(
        rows.execute(
            "SELECT * FROM workshop_diaryentry WHERE machine_id = ? AND act = 'read'", [machine]
        ).fetchone()
    )
    pick = random.Random(machine)
    for _ in range(max(0, wanted - len(readings))):
        reading = pick.choice(readings)
        verdict = verdicts.get((reading["figure"], reading["piece"], reading["stage"]))
        _put(rows, "readingrow", {**reading, "id": (at := next(numbers)), "superseded": 1})
        if verdict:
            _put(rows, "verdictrow", {**verdict, "id": at, "current": 0})
        names = [f"readingrow:{at}", *([f"verdictrow:{at}"] if verdict else [])]
        place = f"reading:{reading['figure']}:{reading['piece']}:{reading['stage']}"
        _put(rows, "diaryentry", {**entry, **_entry(at, names, place)})


def _numbers(machine: int) -> Iterator[int]:
    """Numbers that no other row has."""
    return count((MACHINES + machine) * APART)


def _entry(number: int, names: list[str], place: str) -> Row:
    return {
        "id": number,
        "touched": json.dumps(names),
        "before": json.dumps({name: {} for name in names}),
        "after": json.dumps({name: {} for name in names}),
        "places": json.dumps([place]),
        "client_key": None,
        "undoes_id": None,
    }


def _put(rows: sqlite3.Connection, table: str, row: Row) -> None:
    columns, marks = ", ".join(f'"{name}"' for name in row), ", ".join("?" * len(row))
    rows.execute(f"INSERT INTO workshop_{table} ({columns}) VALUES ({marks})", list(row.values()))
