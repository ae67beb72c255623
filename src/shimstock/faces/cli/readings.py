"""Commands on readings: read, verdicts, accept, recheck."""

from typing import Annotated, Any

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table
from shimstock.faces.cli.verdict_lines import (
    opened,
    side_by_side,
    verdict_block,
    verdict_data,
)
from shimstock.faces.cli.words_typed import ENTRY_KEYS, FigureName, MachineName, Piece
from shimstock.workshop.looking import kept, measured, see

VERDICT_KEYS = (
    "each with figure, piece, stage, verdict, says, value, unit, expanded (k = 2), p (chance of "
    "being within the limit), settles, remedy, stand_in, accepted"
)


commands = Commands()


@commands.add(
    "read",
    example="shimstock read brackwater F021 0.002 0.003 0.002 0.003 0.002 - --finished",
    keys={
        "reading": "figure, piece, stage, typed, values, unit, instrument, each, conditions",
        "verdicts": VERDICT_KEYS,
        "remedies": "what to do about them, each as in overhaul",
        "entry": "what was written into the diary",
    },
    values=True,
)
def read(
    asked: Asked,
    machine: MachineName,
    figure: FigureName,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="[PIECE] VALUE", help='As read: 5.7592, "2 1/2 in", -0.003; - for none.'
        ),
    ],
    finished: Annotated[
        bool, typer.Option("--finished", help="After the work; else as found.")
    ] = False,
    with_: Annotated[
        str, typer.Option("--with", metavar="INSTRUMENT", help="Else the one in the book.")
    ] = "",
    good_to: Annotated[
        str, typer.Option(metavar="SIZE", help='How true it is, as "0.0003 in".')
    ] = "",
    meant: Annotated[
        bool, typer.Option("--meant", help="Keep it although it looks like a slip.")
    ] = False,
    each: Annotated[
        int, typer.Option(metavar="N", help="Each value is the mean of N readings.")
    ] = 1,
) -> Answer:
    """Take a reading: what it means and what to do."""
    from shimstock.faces.cli import reading_typed
    from shimstock.workshop import acts

    said = reading_typed.sort(see(machine).book, figure, words, with_, good_to)
    took = acts.take_reading(
        machine=machine, figure=said.figure, piece=said.piece, typed=said.values,
        instrument=said.instrument, stage=STAGES[finished], meant=meant, each=each, who=asked.who,
    )  # fmt: skip
    return _took(machine, took)


@commands.add(
    "verdicts",
    example="shimstock verdicts brackwater F002 --working",
    keys={
        "verdicts": VERDICT_KEYS + "; worn first",
        "not_measured": "figures without a reading",
    },
)
def verdicts(
    asked: Asked,
    machine: MachineName,
    figure: Annotated[str | None, typer.Argument(metavar="[FIGURE]", help="Only this one.")] = None,
    working: Annotated[bool, typer.Option("--working", help="Show how each was reached.")] = False,
    all_: Annotated[
        bool, typer.Option("--all", help="Name also what has not been measured.")
    ] = False,
) -> Answer:
    """Show verdicts, as found and as finished, worn first."""
    from shimstock.workshop.verdicts_told import verdicts_that_count

    seen = see(machine)
    rows, missing = verdicts_that_count(seen, figure)
    shown: list[Shown] = [side_by_side(seen.book, rows)]
    shown += [line for row in rows if working for line in opened(seen.book, row)]
    shown += _unmeasured(seen.book, missing) if all_ else []
    data = [verdict_data(seen.book, row, working) for row in rows]
    return Answer({"verdicts": data, "not_measured": missing}, shown)


@commands.add(
    "accept",
    example='shimstock accept brackwater F042 --reason "gears are in the post"',
    keys=ENTRY_KEYS,
)
def accept(
    asked: Asked,
    machine: MachineName,
    figure: FigureName,
    reason: Annotated[str, typer.Option(help="Why it may stay; signed by you.")],
    piece: Piece = "",
) -> Answer:
    """Accept a verdict that is not within its limit."""
    from shimstock.workshop import acts

    entry = acts.accept_verdict(
        machine=machine, figure=figure, piece=piece, reason=reason, who=asked.who
    )
    return Answer(kept(entry), [kept_line(entry)])


@commands.add(
    "recheck",
    example="shimstock recheck",
    keys={
        "looked_at": "verdicts judged again",
        "changes": "each with machine, figure, piece, stage, stored, today",
        "entries": "what was written down; empty without --apply",
        "stopped": "true where it was stopped",
    },
)
def recheck(
    asked: Asked,
    machine: Annotated[
        str | None, typer.Argument(metavar="[MACHINE]", help="Else all of them.")
    ] = None,
    apply: Annotated[
        bool, typer.Option("--apply", help="Put the new verdicts beside the stored ones.")
    ] = False,
) -> Answer:
    """Judge every verdict again; list what would change."""
    from shimstock.faces.cli.progress import progress_until_stopped
    from shimstock.workshop import acts

    with progress_until_stopped("Judging again") as progress:
        found = acts.recheck(machine=machine, apply=apply, who=asked.who, progress=progress)
    return _rechecked(found)


STAGES = {False: "as found", True: "as finished"}


def _took(machine: str, took: Any) -> Answer:
    from shimstock.faces.cli.overhaul import remedies_shown, remedy_data
    from shimstock.faces.cli.reading_typed import understood

    seen, row = see(machine), took.reading
    book, touched = seen.book, {each.figure for each in took.verdicts}
    remedies = [each for each in measured(seen)[1] if touched & set(each.figures)]
    reading = {
        name: getattr(row, name)
        for name in ("figure", "piece", "stage", "typed", "values", "unit", "instrument", "each")
    } | {"conditions": book.measures[row.figure].conditions}
    shown: list[Shown] = [*understood(book, row), ""]
    shown += [block for each in took.verdicts for block in verdict_block(book, each)]
    data = [verdict_data(book, each, False) for each in took.verdicts]
    return Answer(
        {
            "reading": reading,
            "verdicts": data,
            "remedies": [remedy_data(each) for each in remedies],
            "entry": kept(took.entry),
        },
        [*shown, *remedies_shown(remedies), "", kept_line(took.entry)],
    )


def _unmeasured(book: Any, missing: list[str]) -> list[Shown]:
    rows = [
        (book.measures[key].mark or "", book.measures[key].name, book.measures[key].with_ or "")
        for key in missing
    ]
    return [Heading("Not measured"), Table(("mark", "figure", "with"), rows)]


def _rechecked(found: Any) -> Answer:
    from dataclasses import asdict

    from shimstock.workshop.wording import count_of

    rows = [
        (
            f"{c.machine}: {c.figure.replace('-', ' ')} {c.piece}".strip(),
            str(c.stage),
            _gist(c.stored),
            _gist(c.today),
        )
        for c in found.changes
    ]
    judged = count_of(found.looked_at, "verdict")
    lines: list[Shown] = [f"{judged} judged again, {len(rows) or 'none'} would change."]
    lines += [Table(("figure", "stage", "stored", "today"), rows)] if rows else []
    lines += [kept_line(entry) for entry in found.entries]
    lines += ["Stopped before the end; the machines done so far are complete."] * found.stopped
    data = {
        "looked_at": found.looked_at,
        "changes": [asdict(each) for each in found.changes],
        "entries": [kept(entry) for entry in found.entries],
        "stopped": found.stopped,
    }
    return Answer(data, lines, faults=bool(found.changes and not found.entries))


def _gist(judgement: Any) -> str:
    return "none" if judgement is None else str(judgement.says or judgement.verdict)
