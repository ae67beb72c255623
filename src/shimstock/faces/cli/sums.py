"""The command sum: the trade's sums, each with its own options, made when it is asked for."""

from __future__ import annotations

import inspect
from typing import TYPE_CHECKING, Annotated, Any

import typer
from typer.core import TyperGroup

from shimstock.faces.cli.command import Json, Later, Made, epilog_of, wrapped
from shimstock.faces.cli.shown import Answer, Heading, Table

if TYPE_CHECKING:
    from shimstock.trade.sums.declare import Input, Sum
    from shimstock.trade.sums.typed import Done

KEYS = {
    "sum": "its name",
    "given": "by input: typed, value, unit, and its origin",
    "steps": "the working, line by line",
    "results": "by name: value and unit",
    "source": "where the formula stands in print",
    "cautions": "what belongs to the work",
}
EXAMPLE = "shimstock sum ring-gap --bore '3 1/2 in'"
Wanted = Annotated[
    str,
    typer.Option("--in", metavar="UNITS", help="Units for the results, with commas between."),
]
Machine = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="MACHINE WHERE",
        help="Take what its book and readings hold; WHERE is a joint, figure or train.",
    ),
]


class OneByOne(TyperGroup):
    """Finds a sum by its name and makes its command; the others are not looked at."""

    def list_commands(self, ctx: typer.Context) -> list[str]:  # type: ignore[override]
        """None: there are too many for a help page; `shimstock sum` lists them by family."""
        return []

    def get_command(self, ctx: typer.Context, cmd_name: str) -> Any:  # type: ignore[override]
        """The command of one sum, or the list of a family. Raises NotUnderstood."""
        from shimstock.trade.sums.find import families, find_sum

        if cmd_name in families():
            return list_of(cmd_name)
        return command_of(find_sum(cmd_name))


def command_of(sum_: Sum) -> Any:
    """A sum as a command: an option for each input, its source and example below them."""
    from shimstock.faces.cli.sum_lines import below_options

    app = typer.Typer(rich_markup_mode=None, add_completion=False)
    about = "\n\n".join(each for each in (sum_.sentence, sum_.remarks) if each)
    app.command(sum_.name, help=about, epilog=below_options(sum_))(_run(sum_))
    return typer.main.get_command(app)


def list_of(family: str) -> Any:
    """A command that lists the sums of one family."""

    def work() -> Answer:
        return _listing(family)

    app = typer.Typer(rich_markup_mode=None, add_completion=False)
    app.command(family, help=f"List the sums of the family {family}.")(wrapped(work, shed=False))
    return typer.main.get_command(app)


def _run(sum_: Sum) -> Any:
    def work(*, later: Later, machine: Machine = None, in_: Wanted = "", **typed: Any) -> Answer:
        from shimstock.faces.cli.sum_lines import answer_of
        from shimstock.trade.sums.typed import work_out

        said = {
            name: _text(sum_.input(name), value)
            for name, value in typed.items()
            if value is not None
        }
        units = [unit for unit in in_.split(",") if unit.strip()]
        if machine:
            return answer_of(_from_machine(later, sum_, machine, said, units))
        return answer_of(work_out(sum_, said, wanted=units))

    keyword = inspect.Parameter.KEYWORD_ONLY
    first = [
        inspect.Parameter("later", keyword, annotation=Later),
        inspect.Parameter("machine", keyword, annotation=Machine, default=None),
    ]
    own = [
        inspect.Parameter(one.name, keyword, annotation=_option(one), default=None)
        for one in sum_.inputs
    ]
    last = inspect.Parameter("in_", keyword, annotation=Wanted, default="")
    work.__signature__ = inspect.Signature([*first, *own, last])  # type: ignore[attr-defined]
    return wrapped(work, shed=False)


def _from_machine(
    later: Later, sum_: Sum, machine: list[str], said: dict[str, str], units: list[str]
) -> Done:
    """A sum with what the machine's book and readings hold."""
    later()
    from shimstock.workshop.find import find_machine
    from shimstock.workshop.for_sums import work_out_for

    row = find_machine(machine[0])
    return work_out_for(row, sum_, machine[1:], typed=said, wanted=units)


def _option(one: Input) -> Any:
    from shimstock.trade.sums.said import help_of, metavar_of

    if isinstance(one.default, bool):
        flag = typer.Option(f"{one.option}/--no-{one.option[2:]}", help=help_of(one))
        return Annotated[bool | None, flag]
    option = typer.Option(one.option, metavar=metavar_of(one), help=help_of(one))
    return Annotated[list[str] | None, option]


def _text(one: Input, value: list[str] | bool) -> str:
    """What was typed for one input. Raises NotUnderstood where it was typed twice."""
    from shimstock.trade.numbers.not_understood import NotUnderstood

    if isinstance(value, bool):
        return "yes" if value else "no"
    if len(value) > 1:
        both = " and ".join(value)
        raise NotUnderstood(both, f"were both typed for {one.words}", tuple(value))
    return value[0]


class Family:
    """The command sum as a family: one command that is many."""

    made = (Made("sum", EXAMPLE, KEYS, lambda: None, False),)

    def add_to(self, app: typer.Typer) -> None:
        """Add it to the program."""
        group = typer.Typer(
            cls=OneByOne,
            invoke_without_command=True,
            rich_markup_mode=None,
            epilog=f"{epilog_of(EXAMPLE, KEYS)}\n\n\b\n  shimstock sum NAME --help"
            " says what one takes, its units and its source.",
        )
        group.callback()(list_sums)
        app.add_typer(group, name="sum")


def list_sums(ctx: typer.Context, json_: Json = False) -> None:
    """Do one of the trade's sums, or list them by family.

    Type NAME and its options: shimstock sum NAME [MACHINE [WHERE]...] --option VALUE. The working
    is shown like a calculation by hand. Alone it lists every sum; the name of a family, its own.
    """
    if ctx.invoked_subcommand is None:
        wrapped(_listing, shed=False)(ctx=ctx, json_=json_, shed_=None, who_=None)


def _listing(family: str = "") -> Answer:
    """Every sum by family, or those of one, with a sentence each."""
    from shimstock.trade.sums.find import all_sums

    every = {name: sums for name, sums in all_sums().items() if family in ("", name)}
    data = {
        family: [{"sum": each.name, "about": each.sentence} for each in sums]
        for family, sums in every.items()
    }
    shown: list[Any] = []
    for family, sums in every.items():
        rows = [(each.name, each.sentence) for each in sums]
        shown += [Heading(family), Table(("sum", "what it works out"), rows)]
    return Answer({"families": data}, shown)


commands = Family()
