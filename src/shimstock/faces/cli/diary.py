"""Commands on the diary: diary, undo."""

from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer, Table
from shimstock.faces.cli.words_typed import ENTRY_KEYS, MachineName
from shimstock.workshop.looking import kept

commands = Commands()


@commands.add(
    "diary",
    example="shimstock diary brackwater --last 10",
    keys={
        "entries": "oldest first, each with entry, at, who, says, undone_by and "
        "changes (empty without --before-after)"
    },
)
def diary(
    asked: Asked,
    machine: MachineName,
    last: Annotated[int, typer.Option(metavar="N", min=1, help="How many.")] = 20,
    before_after: Annotated[
        bool, typer.Option("--before-after", help="Show what each of them changed.")
    ] = False,
) -> Answer:
    """Show what was done, by whom and when."""
    from django.utils.timezone import localtime

    from shimstock.workshop.changes import changes_told
    from shimstock.workshop.find import find_machine

    newest = find_machine(machine).diary.order_by("-pk").prefetch_related("undone_by")[:last]
    entries = list(reversed(newest))
    undone = {e.pk: next((other.pk for other in e.undone_by.all()), None) for e in entries}
    changes = {e.pk: list(changes_told(e)) if before_after else [] for e in entries}
    rows = [
        (str(e.pk), f"{localtime(e.at):%d %b %Y}", e.who,
         "\n  ".join([e.says + (f" (undone by {undone[e.pk]})" if undone[e.pk] else ""),
                     *changes[e.pk]]))
        for e in entries
    ]  # fmt: skip
    return Answer(
        {
            "entries": [
                kept(e) | {"undone_by": undone[e.pk], "changes": changes[e.pk]} for e in entries
            ]
        },
        [Table(("entry", "on", "who", "what"), rows, frozenset({"entry"}))],
    )


@commands.add(
    "undo",
    example="shimstock undo 3 --who Ida",
    keys=ENTRY_KEYS,
)
def undo(
    asked: Asked,
    entry: Annotated[int, typer.Argument(metavar="ENTRY", help="Its number in the diary.")],
) -> Answer:
    """Undo an act by a further act; nothing is deleted."""
    from shimstock.workshop import acts

    undone = acts.undo(entry_id=entry, who=asked.who)
    return Answer(kept(undone), [kept_line(undone)])
