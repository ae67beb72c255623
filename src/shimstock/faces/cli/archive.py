"""Commands that carry data out and back: card, labels, table, archive, restore."""

from collections.abc import Mapping
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands, Later
from shimstock.faces.cli.paper import Sheet
from shimstock.faces.cli.shown import Answer
from shimstock.faces.cli.words_typed import JointName, MachineName

commands = Commands()

Out = Annotated[Path | None, typer.Option(metavar="FILE", help="Else in the shed's papers.")]
EXAMPLE = "http://192.168.1.20:8140"


class LabelSheet(StrEnum):
    """Sheets that labels are printed on."""

    A4 = "a4"
    LETTER = "letter"
    ROLL = "roll"


@commands.add(
    "card",
    example="shimstock card brackwater J36 --out J36.pdf",
    keys={"file": "what was written"},
)
def card(
    asked: Asked,
    machine: MachineName,
    joint: JointName,
    out: Out = None,
    paper: Annotated[Sheet, typer.Option("--paper", help="The sheet it is printed on.")] = Sheet.A4,
    address: Annotated[
        str | None,
        typer.Option(metavar="URL", help="Where phones find the shed; else no code to scan."),
    ] = None,
) -> Answer:
    """Write a joint's job card as a PDF."""
    from shimstock.faces.paper.job_card import job_card
    from shimstock.faces.paper.square import base_typed
    from shimstock.workshop.at_joint import at_joint
    from shimstock.workshop.looking import see

    at = at_joint(see(machine), joint)
    base = base_typed(address) if address else ""
    name = f"{at.seen.row.slug}-{at.mark}.pdf"
    return _written(job_card(at, base=base, paper=paper.value), out or asked.shed / "papers" / name)


@commands.add(
    "labels",
    example=f"shimstock labels brackwater --joint J36 --address {EXAMPLE}",
    keys={"file": "what was written", "labels": "how many"},
)
def labels(
    asked: Asked,
    machine: MachineName,
    address: Annotated[str, typer.Option(metavar="URL", help="Where phones find the shed.")],
    out: Out = None,
    open_joints: Annotated[bool, typer.Option("--open", help="Of all open joints.")] = False,
    bags: Annotated[bool, typer.Option("--bags", help="Of all bags.")] = False,
    shelves: Annotated[bool, typer.Option("--shelves", help="Of all shelves.")] = False,
    joint: Annotated[
        list[str] | None, typer.Option(metavar="JOINT", help="Of this joint; repeat.")
    ] = None,
    part: Annotated[
        list[str] | None, typer.Option(metavar="PART", help="Of this part; repeat.")
    ] = None,
    sheet: Annotated[
        LabelSheet, typer.Option(help="What they are printed on; roll is 50 × 30 mm.")
    ] = LabelSheet.A4,
    start: Annotated[
        int, typer.Option(metavar="N", help="First label left on a part-used sheet.")
    ] = 1,
) -> Answer:
    """Write labels with codes to scan as a PDF."""
    from shimstock.faces.paper.labels import Wanted, labels_of, labels_pdf
    from shimstock.faces.paper.square import base_typed
    from shimstock.workshop.find import find_joint, find_part
    from shimstock.workshop.looking import see

    seen = see(machine)
    joints = tuple(find_joint(seen.book, typed) for typed in joint or ())
    parts = tuple(find_part(seen.book, typed) for typed in part or ())
    found = labels_of(seen, Wanted(open_joints, bags, shelves, joints, parts))
    pdf = labels_pdf(seen, found, base=base_typed(address), sheet=sheet.value, start=start)
    answer = _written(pdf, out or asked.shed / "papers" / f"{seen.row.slug}-labels.pdf")
    return Answer(answer.data | {"labels": len(found)}, answer.shown)


@commands.add(
    "table",
    example="shimstock table brackwater --out readings.csv",
    keys={"file": "what was written"},
)
def table(asked: Asked, machine: MachineName, out: Out = None) -> Answer:
    """Write all readings as a table (CSV), one row a reading."""
    from shimstock.faces.paper.readings_csv import readings_csv
    from shimstock.workshop.looking import see

    seen = see(machine)
    text = "".join(readings_csv(seen))
    return _written(text.encode(), out or asked.shed / "papers" / f"{seen.row.slug}-readings.csv")


@commands.add(
    "archive",
    example="shimstock archive workshop.zip",
    keys={
        "file": "what was written",
        "counts": "machines, readings, photos and so on in it",
        "missing": "pictures that the book names and that are not in the shed's folder",
    },
)
def archive(
    asked: Asked,
    file: Annotated[
        Path | None, typer.Argument(metavar="[FILE]", help="Else shed-DATE.zip here.")
    ] = None,
) -> Answer:
    """Write the whole workshop into one file."""
    from shimstock.faces.cli.progress import progress_until_stopped
    from shimstock.workshop.archive.make import megabytes, name_today, write_archive

    out = file or Path(name_today(asked.shed))
    with progress_until_stopped("Writing the archive") as progress:
        made = write_archive(asked.shed, out, progress)
    shown = [
        f"Wrote {out}, {megabytes(out.stat().st_size)}: {_counted(made.manifest.counts)}.",
        f"Not in it: {'; '.join(made.manifest.left_out)}.",
        *(f"Missing in the shed's photos: {name}" for name in made.missing),
    ]
    counts = dict(made.manifest.counts)
    return Answer({"file": str(out), "counts": counts, "missing": list(made.missing)}, shown)


@commands.add(
    "restore",
    example="shimstock restore workshop.zip --shed NEW",
    keys={
        "shed": "the folder",
        "counts": "machines, readings, photos and so on in it",
        "made_at": "when the archive was made",
    },
    shed=False,
)
def restore(
    later: Later,
    folder: Path | None,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="An archive.")],
) -> Answer:
    """Take a workshop back from its archive, into a new folder."""
    from shimstock.faces.cli.progress import progress_until_stopped
    from shimstock.workshop.archive.take_back import take_back
    from shimstock.workshop.refused import Refused

    if folder is None:
        raise Refused(["No folder is named for the workshop; name a new one: --shed DIR"])
    with progress_until_stopped("Taking the workshop back") as progress:
        manifest = take_back(file, folder.expanduser().absolute(), progress)
    shed = later().shed
    shown = [
        f"Took back into {shed}: {_counted(manifest.counts)}.",
        "Passwords stay out of archives: whoever signs in joins anew, under the old name.",
    ]
    data = {"shed": str(shed), "counts": dict(manifest.counts), "made_at": manifest.made_at}
    return Answer(data, shown)


def _written(content: bytes, out: Path) -> Answer:
    from shimstock.faces.paper.typeset import put

    out.parent.mkdir(parents=True, exist_ok=True)
    put(content, out)
    return Answer({"file": str(out)}, [f"Wrote {out}."])


def _counted(counts: Mapping[str, int]) -> str:
    return ", ".join(f"{count} {name}" for name, count in counts.items())
