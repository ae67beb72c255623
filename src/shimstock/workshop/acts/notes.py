"""Notes on a place."""

from datetime import datetime

from shimstock.workshop.ledger import writing
from shimstock.workshop.models import DiaryEntry, Machine, Note
from shimstock.workshop.place_typed import place_called, place_typed
from shimstock.workshop.refused import Refused

TOLD = 80
"""Letters of a note that the diary repeats."""


def write_note(
    *, machine: str | Machine, about: str, text: str, who: str, at: datetime | None = None
) -> DiaryEntry:
    """Write down a note about a joint, a part or the whole machine.

    about: a joint or part by key, mark or name, its place, or machine.
    Raises Refused where the note says nothing, UnknownName for a place the book does not know.
    """
    with writing("note", who=who, machine=machine, at=at) as pen:
        said = text.strip()
        if not said:
            raise Refused(["The note is empty: write what there is to know."])
        place = place_typed(pen.book, about)
        pen.save(Note(machine=pen.machine, about=place, text=said, by=pen.who, at=pen.at))
        pen.says = f"Note on {place_called(pen.book, place)}: {_short(said)}"
    return pen.entry


def _short(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= TOLD else f"{line[: TOLD - 1].rstrip()}…"
