"""Commands on gates: gate, answer."""

from typing import Annotated

import typer

from shimstock.faces.cli.command import Asked, Commands
from shimstock.faces.cli.looking import kept_line
from shimstock.faces.cli.shown import Answer
from shimstock.faces.cli.words_typed import ENTRY_KEYS, MachineName
from shimstock.workshop.looking import kept, see

commands = Commands()


@commands.add(
    "gate",
    example="shimstock gate brackwater paint",
    keys={
        "gates": "each with gate, name, passed, may_be_passed, says, open (points in working "
        "order), settled, as_they_came (not looked at), dry (leak-checked or chalk-dry), "
        "on_paint, minutes, run_first (what to do before the engine is run), cautions",
        "entry": "or null",
    },
)
def gate(
    asked: Asked,
    machine: MachineName,
    gate: Annotated[
        str | None,
        typer.Argument(metavar="[GATE]", help="Which; all of them in short if none."),
    ] = None,
    pass_: Annotated[bool, typer.Option("--pass", help="Pass it, in your name.")] = False,
) -> Answer:
    """Show what still blocks a gate, or pass it."""
    return _gate(asked, machine, gate, pass_)


@commands.add(
    "answer",
    example='shimstock answer lowmere old-paint "no old paint"',
    keys=ENTRY_KEYS,
)
def answer(
    asked: Asked,
    machine: MachineName,
    point: Annotated[str, typer.Argument(metavar="POINT", help="The question's key.")],
    said: Annotated[str, typer.Argument(metavar="ANSWER", help="In your words; signed by you.")],
    reason: Annotated[
        str, typer.Option(help="Why the gate may be passed although this does not settle it.")
    ] = "",
) -> Answer:
    """Answer a gate's question, and sign it."""
    from shimstock.workshop import acts

    entry = acts.answer_point(
        machine=machine, point=point, answer=said, who=asked.who, reason=reason
    )
    return Answer(kept(entry), [kept_line(entry), *_still_open(machine, point)])


def _still_open(machine: str, typed: str) -> list[str]:
    """Where the answer does not settle the question, what would."""
    from shimstock.workshop import rules
    from shimstock.workshop.find import find_point

    seen = see(machine)
    points = rules.open_points(seen.now)
    left = points.get(find_point(seen.book, typed, points))
    return [f"This does not settle it; to do: {left.would_do}."] if left else []


def _gate(asked: Asked, machine: str, typed: str | None, pass_it: bool) -> Answer:
    from shimstock.faces.cli.gate_lines import gate_shown, gates_data, gates_shown
    from shimstock.workshop import acts
    from shimstock.workshop.find import find_gate

    seen = see(machine)
    if pass_it and typed is None:
        raise typer.BadParameter("--pass wants the gate that is to be passed")
    keys = [find_gate(seen.book, typed)] if typed else list(seen.book.gates)
    entry = acts.pass_gate(machine=machine, gate=keys[0], who=asked.who) if pass_it else None
    gates = gates_data(see(machine), keys)
    shown = gate_shown(gates[0]) if typed else gates_shown(gates)
    said = [kept_line(entry)] if entry else []
    return Answer({"gates": gates, "entry": kept(entry) if entry else None}, [*said, *shown])
