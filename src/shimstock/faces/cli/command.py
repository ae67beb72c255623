"""How a command is made: its help, its --json, its shed, and what its exit code means."""

from __future__ import annotations

import inspect
import json
import os
import sys
import textwrap
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import wraps
from pathlib import Path
from typing import Annotated, Any

import typer

from shimstock.faces.cli.shown import Answer, show

DONE, REFUSED, NOT_UNDERSTOOD = 0, 1, 2

Json = Annotated[bool, typer.Option("--json", help="Print the answer as JSON, and nothing else.")]
Shed = Annotated[
    Path | None,
    typer.Option("--shed", metavar="DIR", help="Folder of the workshop. [env: SHIMSTOCK_SHED]"),
]
Who = Annotated[
    str | None,
    typer.Option(
        "--who", metavar="NAME", help="Who does it. [env: SHIMSTOCK_WHO; else login name]"
    ),
]


@dataclass(frozen=True)
class Asked:
    """What stands behind every command: who asks, and the folder of the shed."""

    who: str
    shed: Path


Later = Callable[[], Asked]
"""Opens the shed when it is called: for a command that needs it only if a machine is named."""
GIVEN = ("asked", "later", "folder")
"""What a command is handed beside what was typed."""


@dataclass
class Opener:
    """Opens the shed, and holds what was said before the command."""

    open: Callable[[Path | None], Path]
    shed: Path | None = None
    who: str | None = None


@dataclass(frozen=True)
class Made:
    """A command: its path such as `book check`, how it is documented, and what it does."""

    path: str
    example: str
    keys: Mapping[str, str]
    run: Callable[..., None]
    values: bool

    def add_to(self, app: typer.Typer) -> None:
        """Add it to the program, or to its family there."""
        settings = {"ignore_unknown_options": True} if self.values else None
        name = self.path.split()[-1]
        epilog = epilog_of(self.example, self.keys)
        app.command(name, epilog=epilog, context_settings=settings)(self.run)


class Commands:
    """The commands of one family; those of a group are typed after the group's name.

    group: its name; "" for none. help: what the group is about.
    """

    def __init__(self, group: str = "", help: str = "") -> None:
        self.made: list[Made] = []
        self._group = group
        self._help = help

    def add(
        self,
        path: str,
        *,
        example: str,
        keys: Mapping[str, str],
        shed: bool = True,
        values: bool = False,
    ) -> Callable[[Callable[..., Answer]], Callable[..., None]]:
        """Make a function into a command.

        path: as it is typed after `shimstock`. example: a line that works on the demo shed.
        keys: what --json prints, key by key. shed: whether it needs the workshop's data; the
        function is then given an `Asked` first. values: whether words such as -0.003 are numbers,
        not options. A function with a `folder` is given the folder that was named for the shed.
        """

        def make(work: Callable[..., Answer]) -> Callable[..., None]:
            run = wrapped(work, shed)
            self.made.append(Made(path, example, keys, run, values))
            return run

        return make

    def add_to(self, app: typer.Typer) -> None:
        """Add all of them to the program."""
        family = app
        if self._group:
            lines = "\n".join(f"  {made.example}" for made in self.made)
            epilog = f"\b\nExamples:\n{lines}"
            family = typer.Typer(help=self._help, epilog=epilog, rich_markup_mode=None)
            app.add_typer(family, name=self._group, no_args_is_help=True)
        for made in self.made:
            made.add_to(family)


def wrapped(work: Callable[..., Answer], shed: bool) -> Callable[..., None]:
    """The work with what all commands share: --json, the shed and who, and the printing."""
    wanted = inspect.signature(work).parameters

    @wraps(work)
    def wrapper(ctx: typer.Context, **given: Any) -> None:
        as_json, folder, who = (given.pop(name) for name in ("json_", "shed_", "who_"))
        opener: Opener = ctx.obj

        def open_it() -> Asked:
            return Asked(who or opener.who or _login(), opener.open(folder or opener.shed))

        if shed:
            given["asked"] = open_it()
        elif "later" in wanted:
            given["later"] = open_it
        if "folder" in wanted:
            given["folder"] = folder or opener.shed
        answer = work(**given)
        _print(answer, as_json)
        if answer.faults:
            raise typer.Exit(REFUSED)

    _sign(wrapper, work)
    return wrapper


def _print(answer: Answer, as_json: bool) -> None:
    """Print an answer; a reader who has seen enough (`| head`) is no fault."""
    try:
        if as_json:
            print(json.dumps(answer.data, ensure_ascii=False, indent=2))
        else:
            show(answer.shown)
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _sign(wrapper: Callable[..., None], work: Callable[..., Answer]) -> None:
    """Give the wrapper the parameters of the work, and those that all commands share."""
    own = inspect.signature(work, eval_str=True).parameters.values()
    shared = {"json_": (Json, False), "shed_": (Shed, None), "who_": (Who, None)}
    keyword = inspect.Parameter.KEYWORD_ONLY
    parameters = [
        inspect.Parameter("ctx", keyword, annotation=typer.Context),
        *(p.replace(kind=keyword) for p in own if p.name not in GIVEN),
        *(
            inspect.Parameter(name, keyword, annotation=kind, default=default)
            for name, (kind, default) in shared.items()
        ),
    ]
    wrapper.__signature__ = inspect.Signature(parameters)  # type: ignore[attr-defined]
    wrapper.__annotations__ = {p.name: p.annotation for p in parameters}
    del wrapper.__wrapped__  # type: ignore[attr-defined]


def _login() -> str:
    import getpass

    return os.environ.get("SHIMSTOCK_WHO") or getpass.getuser()


def epilog_of(example: str, keys: Mapping[str, str]) -> str:
    """What stands below a command's options: an example, and what --json prints."""
    width = max(map(len, keys))
    lines = [
        textwrap.fill(
            f"{key:<{width}}  {meaning}", 76, initial_indent="  ",
            subsequent_indent=" " * (width + 4), break_on_hyphens=False,
        )
        for key, meaning in keys.items()
    ]  # fmt: skip
    said = "\n".join(["\b", "With --json, an object with these keys:", *lines])
    return f"\b\nExample:\n  {example}\n\n{said}"
