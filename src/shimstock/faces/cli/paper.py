"""Commands that write paper: record."""

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.shown import Answer
from shimstock.faces.cli.words_typed import MachineName

commands = Commands()


class Sheet(StrEnum):
    """Sheets that a record is printed on."""

    A4 = "a4"
    LETTER = "letter"


@commands.add(
    "record",
    example="shimstock record lowmere --out lowmere.pdf",
    keys={"file": "what was written"},
)
def record(
    asked: Asked,
    machine: MachineName,
    out: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Else in the shed's papers.")
    ] = None,
    paper: Annotated[Sheet, typer.Option("--paper", help="The sheet it is printed on.")] = Sheet.A4,
) -> Answer:
    """Write a machine's record as a PDF."""
    written = write_record(machine, asked.shed, out, paper)
    return Answer({"file": str(written)}, [f"Wrote {written}."])


def write_record(machine: str, shed: Path, out: Path | None, paper: Sheet = Sheet.A4) -> Path:
    """Write a machine's record: where it is asked for, else among the shed's papers."""
    from shimstock.faces.paper.record import record
    from shimstock.workshop.find import find_machine

    row = find_machine(machine)
    file = out or shed / "papers" / f"{row.slug}.pdf"
    file.parent.mkdir(parents=True, exist_ok=True)
    return record(row, file, paper=paper.value)
