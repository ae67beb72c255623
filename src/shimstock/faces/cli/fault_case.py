"""A neutral case file at the terminal: what it can be, and what to check next."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from shimstock.faces.cli.command import NOT_UNDERSTOOD, REFUSED
from shimstock.faces.cli.shown import Answer, Heading, Shown, Table, Verbatim
from shimstock.faces.cli.wrong import Wrong
from shimstock.trade.numbers.percent import percent, percent_or_settled

if TYPE_CHECKING:
    from shimstock.trade.faults.case import CaseAnswer

STDIN = "-"
MANY = 40
"""How many faults of a file are shown."""


def case_answer(path: str) -> Answer:
    """Answer a case file, or stdin for "-"; a file at fault is told on stderr, with exit code 2.

    Raises OSError for a file that cannot be read.
    """
    from shimstock.trade.faults.case import answer, read_case
    from shimstock.trade.faults.case_form import CaseErrors
    from shimstock.trade.faults.network import CannotBe

    try:
        found = answer(read_case(_raw(path)))
    except CaseErrors as errors:
        lines = [str(each) for each in errors.faults]
        more = [f"and {len(lines) - MANY} more"] if len(lines) > MANY else []
        _tell(path, [*lines[:MANY], *more], "docs/fault-case.md says how a case is written")
        raise typer.Exit(NOT_UNDERSTOOD) from None
    except CannotBe as error:
        would = (
            'look through "reported" and "observed", and the leaks, weights and priors of 0 or 1'
        )
        _tell(path, [f"{error}."], would)
        raise typer.Exit(REFUSED) from None
    return Answer(_data(found), _lines(found))


def schema_answer() -> Answer:
    """The form of a case file as JSON Schema."""
    import json

    from shimstock.trade.faults.case_schema import case_schema

    form = case_schema()
    return Answer(form, [Verbatim(json.dumps(form, indent=2, ensure_ascii=False))])


def _raw(path: str) -> bytes:
    from shimstock.trade.faults.case import MOST_BYTES

    if path == STDIN:
        return sys.stdin.buffer.read(MOST_BYTES + 1)
    with Path(path).open("rb") as file:
        return file.read(MOST_BYTES + 1)


def _tell(path: str, wrong: list[str], would: str) -> None:
    print(Wrong(wrong, [would]).text(["fault", "--case", path]), file=sys.stderr)


def _data(found: CaseAnswer) -> dict[str, Any]:
    ranking, then = found.ranking, found.next
    return {
        "ranking": [{"cause": c, "probability": p} for c, p in ranking.chances.items()],
        "next": {"check": then.check, "minutes": then.minutes} if then else None,
        "method": ranking.method,
        "error": ranking.error,
    }


def _lines(found: CaseAnswer) -> list[Shown]:
    ranking = found.ranking
    rows = [(percent_or_settled(ranking.chances[c]), c) for c in ranking.raised]
    shown: list[Shown] = [Heading("What it can be")]
    shown += [Table(("chance", "cause"), rows, frozenset({"chance"}))] if rows else [
        "Nothing that was seen speaks for any cause."
    ]  # fmt: skip
    if ranking.error:
        shown.append(f"Drawn at random: a chance may be off by {percent(ranking.error)}.")
    return [*shown, Heading("What to check next"), *_next_lines(found)]


def _next_lines(found: CaseAnswer) -> list[str]:
    if found.next is None:
        return ["Nothing: no check is left that tells something new of what was seen."]
    lines = [f"{found.next.check}: {_minutes(found.next.minutes)}, with what is still to be opened"]
    if found.next.expected is not None:
        lines.append(f"Until the cause is found: about {_minutes(found.next.expected)}")
    return lines


def _minutes(minutes: float) -> str:
    return f"{minutes:.0f} min" if minutes >= 1 else f"{minutes:.1f} min"
