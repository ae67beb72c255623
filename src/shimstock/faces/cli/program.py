"""The program `shimstock`: all its commands, and what it says when something is refused."""

import sys
from pathlib import Path
from typing import Annotated

import typer
from typer.core import TyperGroup

from shimstock.faces.cli import (
    archive,
    book,
    demo,
    diary,
    fault,
    gates,
    joints,
    machines,
    notes,
    paper,
    readings,
    serve,
    shims,
    sums,
    ways,
)
from shimstock.faces.cli.command import DONE, NOT_UNDERSTOOD, REFUSED, Opener
from shimstock.faces.cli.wrong import explain

FAMILIES = (
    demo,
    serve,
    book,
    machines,
    joints,
    notes,
    readings,
    ways,
    shims,
    fault,
    sums,
    gates,
    diary,
    paper,
    archive,
)
STOPPED = 130  # what typer makes of Ctrl-C
MADE = {made.path: made for family in FAMILIES for made in family.commands.made}
"""Every command by its path, such as `book check`."""


class InTheirOrder(TyperGroup):
    """Lists the commands in the order in which they are needed, families among them."""

    def list_commands(self, ctx: typer.Context) -> list[str]:  # type: ignore[override]
        """Name the commands by their first word."""
        return list(dict.fromkeys(path.split()[0] for path in MADE))


app = typer.Typer(
    name="shimstock",
    cls=InTheirOrder,
    help="A workshop book that computes, for people who bring worn tractors back to work.",
    epilog="\b\nTo see it work:\n  shimstock demo",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
)
for family in FAMILIES:
    family.commands.add_to(app)


@app.callback()
def begin(
    ctx: typer.Context,
    shed: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Folder of the workshop. [env: SHIMSTOCK_SHED]"),
    ] = None,
    who: Annotated[
        str | None,
        typer.Option(metavar="NAME", help="Who does it. [env: SHIMSTOCK_WHO; else login name]"),
    ] = None,
) -> None:
    """Note what was said before the command."""
    ctx.obj = Opener(open_shed, shed, who)


def open_shed(given: Path | None) -> Path:
    """Open the workshop's data, laying the folder out if it is new. Raises CannotStart."""
    from shimstock.site.shed import shed_folder
    from shimstock.site.start import start

    folder = shed_folder(given)
    start(folder)
    return folder


def outcome(typed: list[str]) -> int:
    """Do what was typed; 0 done, 1 refused, 2 not understood. KeyboardInterrupt goes through."""
    try:
        code = typer.main.get_command(app).main(typed, "shimstock", standalone_mode=False)
        if code == STOPPED:
            raise KeyboardInterrupt
        return code if isinstance(code, int) else DONE
    except typer.Abort:
        raise KeyboardInterrupt from None
    except Exception as error:
        if type(error).__name__ == "NoArgsIsHelpError":
            print(getattr(error, "ctx").get_help())  # noqa: B009 - typer does not declare it
            return NOT_UNDERSTOOD
        wrong = explain(error)
        if wrong is None:
            raise
        print(wrong.text(typed, getattr(error, "__notes__", ())), file=sys.stderr)
        return NOT_UNDERSTOOD if wrong.not_understood else REFUSED
