"""Writes docs/commands.md from the help of each command: `python -m` this module > the file."""

from collections.abc import Iterator
from typing import Any

import typer

from shimstock.faces.cli.program import app

HEAD = """\
# Commands

Every command answers `--json` with one JSON object on stdout and nothing else; the keys are named
below and stay. Errors go to stderr and say what was typed, what is wrong and what would do. Exit
codes: 0 done, 1 refused or faults found, 2 not understood.

The shed's folder is `--shed`, else `SHIMSTOCK_SHED`, else `./shed` if it is there, else `shimstock`
in your home. Who does a thing is `--who`, else `SHIMSTOCK_WHO`, else your login name. Both may
stand before the command or after it.

Machines, joints, parts and figures are named by key, mark (`J36`, `F001`) or name, in any case.

The lines below are the commands' own `--help`; the examples work on the shed that `shimstock demo`
lays out.
"""


def page() -> str:
    """The whole page."""
    return "\n".join([HEAD, *(_section(path, text) for path, text in helps())])


def helps() -> Iterator[tuple[str, str]]:
    """Each command by its path, with its help at 80 columns."""
    yield from _helps(typer.main.get_command(app), None, "shimstock")


def _helps(command: Any, parent: Any, name: str) -> Iterator[tuple[str, str]]:
    ctx = command.make_context(name, [], parent=parent, resilient_parsing=True, terminal_width=80)
    below = getattr(command, "commands", {})
    for each, inner in below.items():
        yield from _helps(inner, ctx, each)
    if not below:
        yield ctx.command_path, command.get_help(ctx)


def _section(path: str, text: str) -> str:
    lines = "\n".join(line.rstrip() for line in text.splitlines())
    return f"## {path}\n\n```\n{lines}\n```\n"


if __name__ == "__main__":
    print(page(), end="")
