"""How a sum is shown: below its options, and its answer like a calculation by hand."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Any

from shimstock.faces.cli.shown import Answer, Caution, Heading, Shown, Table
from shimstock.trade.sums.said import example_of, said, spoken
from shimstock.workshop.looking import DEFERS

if TYPE_CHECKING:
    from shimstock.trade.sums.declare import Sum
    from shimstock.trade.sums.typed import Done, Given, Result


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
    rows = [(spoken(each.name), each.typed, each.origin) for each in done.given]
    shown += [Heading("Given"), Table(("what", "as typed or found", "where from"), rows)]
    shown += [Heading("Working"), *(f"  {line}" for line in working.shown())]
    return [*shown, "", f"Source: {working.source}"]


def _result_lines(done: Done) -> list[Shown]:
    width = max((len(spoken(name)) for name in done.results), default=0)
    lines = [f"  {spoken(n):<{width}}  {said(result)}" for n, result in done.results.items()]
    return [Heading("Result"), *lines]


def below_options(sum_: Sum) -> str:
    """Results, source and example, below the options of a sum's help."""
    done = example_of(sum_)
    answers = ", ".join(f"{spoken(n)} ({_in(result)})" for n, result in done.results.items())
    lines = textwrap.wrap(f"Answers: {answers}.", 76) + textwrap.wrap(f"Source: {sum_.source}", 76)
    told = "\n".join(["\b", *lines])
    return f"{told}\n\n\b\nExample:\n{_over_lines(typed_as(sum_))}"


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


def typed_as(sum_: Sum) -> str:
    """The sum's example as it is typed."""
    return f"shimstock sum {sum_.name} {sum_.example}"


def _given_data(each: Given) -> dict[str, Any]:
    values = each.value if isinstance(each.value, list) else [each.value]
    plain = all(isinstance(value, int | float | str) for value in values)
    value = each.value if plain else each.typed  # a thread, a row of points
    return {"typed": each.typed, "value": value, "unit": each.unit, "origin": each.origin}
