"""Commands on the diary: diary, undo."""

from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept, kept_line
from shimstock.faces.cli.shown import Answer, Table
from shimstock.faces.cli.words_typed import ENTRY_KEYS, MachineName

commands = Commands()


@commands.add(
    "diary",
    example="shimstock diary brackwater --last 10",
    keys={"entries": "oldest first, each with entry, at, who, says and undone_by"},
)
def diary(
    asked: Asked,
    machine: MachineName,
    last: Annotated[int, typer.Option(metavar="N", min=1, help="How many.")] = 20,
) -> Answer:
    """Show what was done, by whom and when."""
    from django.utils.timezone import localtime

    from shimstock.workshop.find import find_machine

    newest = find_machine(machine).diary.order_by("-pk").prefetch_related("undone_by")[:last]
    entries = list(reversed(newest))
    undone = {e.pk: next((other.pk for other in e.undone_by.all()), None) for e in entries}
    rows = [
        (str(e.pk), f"{localtime(e.at):%d %b %Y}", e.who,
         e.says + (f" (undone by {undone[e.pk]})" if undone[e.pk] else ""))
        for e in entries
    ]  # fmt: skip
    return Answer(
        {"entries": [kept(e) | {"undone_by": undone[e.pk]} for e in entries]},
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
