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

    from shimstock.workshop.diary_told import newest
    from shimstock.workshop.find import find_machine

    entries = list(reversed(newest(find_machine(machine), last)))
    changes = {each: list(each.changes) if before_after else [] for each in entries}
    rows = [
        (str(each.entry.pk), f"{localtime(each.entry.at):%d %b %Y}", each.entry.who,
         "\n  ".join([each.says, *changes[each]]))
        for each in entries
    ]  # fmt: skip
    return Answer(
        {
            "entries": [
                kept(each.entry) | {"undone_by": each.undone_by, "changes": changes[each]}
                for each in entries
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
