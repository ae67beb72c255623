"""How a sum is shown: its options in words, and its answer like a calculation by hand."""

from __future__ import annotations

import shlex
import textwrap
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Answer, Caution, Heading, Shown, Table
from shimstock.trade.numbers.conversion import convert
from shimstock.trade.numbers.digits import written
from shimstock.trade.numbers.unit_names import find
from shimstock.trade.sums.declare import Input, Of, Read, Sum
from shimstock.workshop.looking import DEFERS

if TYPE_CHECKING:
    from shimstock.trade.sums.typed import Done, Given, Result

# Other units, of the other system mostly, shown in brackets beside a result.
BESIDE = {
    "in": "mm", "mm": "in", "ft": "m", "m": "ft", "in2": "mm2", "mm2": "in2", "in3": "cc",
    "lbf": "N", "N": "lbf", "kN": "lbf", "psi": "MPa", "MPa": "psi", "bar": "psi", "kPa": "psi",
    "ksi": "MPa", "lbf.in": "lbf.ft N.m", "lbf.ft": "N.m", "N.m": "lbf.ft", "N/mm": "lbf/in",
    "lbf/in": "N/mm", "degC": "degF", "degF": "degC", "K": "Fdeg", "hp": "kW", "kW": "hp",
    "mph": "km/h", "km/h": "mph", "kg": "lb", "lb": "kg", "l": "gal", "gal": "l", "cc": "in3",
    "l/min": "gal/min", "gal/min": "l/min", "m/s": "ft/min", "m2": "ft2", "ft2": "m2",
}  # fmt: skip
# A difference of temperature, as a shed calls it.
SPOKEN = {"K": "C degrees", "Fdeg": "F degrees"}
LENGTH_DIGITS, RESULT_DIGITS = 5, 4


def answer_of(done: Done) -> Answer:
    """A sum worked out, for a person and as plain values."""
    working = done.worked.working
    data = {
        "sum": done.sum.name,
        "given": {each.name: _given_data(each) for each in done.given},
        "steps": working.shown(),
        "results": {
            name: {"value": result.value, "unit": result.unit}
            for name, result in done.results.items()
        },
        "source": working.source,
        "cautions": list(working.cautions),
    }
    return Answer(data, [*_above(done), *_result_lines(done)])


def _above(done: Done) -> list[Shown]:
    working = done.worked.working
    shown: list[Shown] = [done.sum.sentence]
    shown += [Caution(text) for text in working.cautions]
    if working.cautions:
        shown.append(DEFERS)
    rows = [(_plain(each.name), each.typed, each.origin) for each in done.given]
    shown += [Heading("Given"), Table(("what", "as typed or found", "where from"), rows)]
    shown += [Heading("Working"), *(f"  {line}" for line in working.shown())]
    return [*shown, "", f"Source: {working.source}"]


def _result_lines(done: Done) -> list[Shown]:
    width = max((len(_plain(name)) for name in done.results), default=0)
    lines = [f"  {_plain(n):<{width}}  {said(result)}" for n, result in done.results.items()]
    return [Heading("Result"), *lines]


def said(result: Result) -> str:
    """A result with its unit, and beside it in the other system's.

    >>> from shimstock.trade.sums.typed import Result
    >>> said(Result(32.5, "N.m")), said(Result("no", ""))
    ('32.5 N.m (23.97 lbf.ft)', 'no')
    """
    if isinstance(result.value, str):
        return result.value
    text = _with_unit(result.value, result.unit)
    others = BESIDE.get(result.unit, "").split()
    beside = [_with_unit(convert(result.value, result.unit, to), to) for to in others]
    return f"{text} ({', '.join(beside)})" if beside else text


def _with_unit(value: float, unit: str) -> str:
    return f"{written(value, _digits(unit))} {SPOKEN.get(unit, unit)}".strip()


def _digits(unit: str) -> int:
    """Figures shown: as many as a micrometer gives for a length, as a gauge for all else."""
    known = find(unit)
    return LENGTH_DIGITS if known and known.kind == "length" else RESULT_DIGITS


def help_of(one: Input) -> str:
    """What an option means, what it must be and what is taken where it is left out."""
    parts = [f"{one.said[:1].upper()}{one.said[1:]}."]
    if isinstance(one.takes, Of) and one.takes.rule:
        parts.append(f"Must be {one.takes.rule}.")
    if isinstance(one.takes, Of) and one.takes.known:
        low, high = one.takes.known
        parts.append(f"The source holds from {low:g} to {high:g}.")
    if isinstance(one.takes, Read):
        parts.append(f"As: {one.takes.example}.")
    if isinstance(one.takes, tuple):
        parts.append(f"One of: {', '.join(one.takes)}.")
    if one.many:
        parts.append("Several, with commas or semicolons between.")
    if one.found:
        parts.append("[from the machine where its book has it]")
    if one.needed:
        parts.append("[needed]")
    elif one.name == "unit":
        parts.append("[else as the values are typed]")
    elif one.default is not None and one.default != "" and not isinstance(one.default, bool):
        shown = f"{one.default:g}" if isinstance(one.default, float | int) else f"{one.default}"
        parts.append(f"[else {shown}]")
    return " ".join(parts)


def metavar_of(one: Input) -> str:
    """The word that stands for the value in the help: what it measures."""
    from shimstock.trade.numbers.coherent import WORDS

    if isinstance(one.takes, tuple):
        return "WORD"
    if not isinstance(one.takes, Of):
        return "UNIT" if one.name == "unit" else "TEXT"
    if one.takes.unit in WORDS:
        return one.takes.unit.upper()
    unit = find(one.takes.unit)
    name = "NUMBER" if unit is None else unit.kind.upper().replace(" ", "-")
    return f"{name},..." if one.many else name


def below_options(sum_: Sum) -> str:
    """Results, source and example, below the options of a sum's help."""
    done = example_of(sum_)
    answers = ", ".join(f"{_plain(n)} ({_in(result)})" for n, result in done.results.items())
    lines = textwrap.wrap(f"Answers: {answers}.", 76) + textwrap.wrap(f"Source: {sum_.source}", 76)
    said = "\n".join(["\b", *lines])
    return f"{said}\n\n\b\nExample:\n{_over_lines(typed_as(sum_))}"


def _over_lines(typed: str) -> str:
    """A long line of typing broken before its options, as a shell takes it."""
    lines = [""]
    for i, part in enumerate(typed.split(" --")):
        piece = f" --{part}" if i else f"  {part}"
        if len(lines[-1]) + len(piece) > 76:
            lines[-1] += " \\"
            piece = f"   {piece}"
            lines.append("")
        lines[-1] += piece
    return "\n".join(lines)


def _in(result: Result) -> str:
    return result.unit or ("in words" if isinstance(result.value, str) else "a number")


def example_of(sum_: Sum) -> Done:
    """The sum's own example, worked out."""
    from shimstock.trade.sums.typed import work_out

    words = shlex.split(sum_.example)
    typed: dict[str, str] = {}
    wanted: list[str] = []
    names = {one.option: one.name for one in sum_.inputs}
    while words:
        option = words.pop(0)
        if option == "--in":
            wanted = words.pop(0).split(",")
        elif option.startswith("--no-") and option not in names:
            typed[names[f"--{option[5:]}"]] = "no"
        elif not words or words[0] in names:
            typed[names[option]] = "yes"
        else:
            typed[names[option]] = words.pop(0)
    return work_out(sum_, typed, wanted=wanted)


def typed_as(sum_: Sum) -> str:
    """The sum's example as it is typed."""
    return f"shimstock sum {sum_.name} {sum_.example}"


def _given_data(each: Given) -> dict[str, Any]:
    values = each.value if isinstance(each.value, list) else [each.value]
    plain = all(isinstance(value, int | float | str) for value in values)
    value = each.value if plain else each.typed  # a thread, a row of points
    return {"typed": each.typed, "value": value, "unit": each.unit, "origin": each.origin}


def _plain(name: str) -> str:
    return name.strip("_").replace("_", " ")
