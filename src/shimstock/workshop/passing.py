"""Gates as people passed them: how each stands, who passed it, and who signed which answer."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from shimstock.trade.reach.answers import answered, set_aside
from shimstock.trade.reach.open_point import OpenPoint
from shimstock.trade.reach.points import points_of

if TYPE_CHECKING:
    from shimstock.trade.machine.gates import Point
    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import GatePass


@dataclass(frozen=True)
class Signed:
    """An answer that stands, and who signed it.

    question: what the book asks; None where an open point was set aside. settles: whether the gate
    is content with it.
    """

    key: str
    asked: str
    answer: str
    by: str
    on: date
    reason: str
    settles: bool
    question: Point | None


def gate_word(*, passed: bool, may_be_passed: bool) -> str:
    """How a gate stands: passed, can be passed or blocked."""
    if passed:
        return "passed"
    return "can be passed" if may_be_passed else "blocked"


def signed_answers(seen: Seen, gate: str) -> list[Signed]:
    """What was answered before a gate: its questions in order, then points that were set aside."""
    now, entry = seen.now, seen.book.gates[gate]
    asked = {key: point.ask for key, point in entry.points.items()}
    still = [point for point in points_of(now, entry) if isinstance(point, OpenPoint)]
    beside = [p for p in still if p.key not in asked and not p.hard]
    aside = {p.key: p.what for p in beside if set_aside(now, p.key)}
    return [
        _signed(seen, key, said, entry.points.get(key))
        for key, said in (asked | aside).items()
        if key in now.answers
    ]


def passes(seen: Seen) -> dict[str, GatePass]:
    """By gate who passed it and when, for those that stand passed."""
    rows = seen.row.gates_passed.filter(withdrawn=False, gate__in=seen.now.passed)
    return {row.gate: row for row in rows}


def _signed(seen: Seen, key: str, asked: str, question: Point | None) -> Signed:
    given = seen.now.answers[key]
    settles = question is None or answered(seen.now, key, question)
    return Signed(key, asked, given.answer, given.by, given.on, given.reason, settles, question)
