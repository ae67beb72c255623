"""Gates: their questions answered and signed, and the gate passed."""

from collections.abc import Mapping
from datetime import datetime

from shimstock.trade.machine.book import Book
from shimstock.trade.reach.answers import NOT_NEEDED
from shimstock.trade.reach.open_point import OpenPoint
from shimstock.workshop import rests, rules
from shimstock.workshop.find import find_gate, find_point
from shimstock.workshop.ledger import writing
from shimstock.workshop.models import AnswerRow, DiaryEntry, GatePass, Machine
from shimstock.workshop.refused import Refused, refuse


def answer_point(
    *,
    machine: str | Machine,
    point: str,
    answer: str,
    who: str,
    reason: str = "",
    at: datetime | None = None,
) -> DiaryEntry:
    """Answer a gate's question, or set an open point aside; an earlier answer stays on record.

    point: a question of the book, or the key of any point that is open before a gate.
    answer: what was found, or "not needed". reason: why, above all where it is not needed.
    Raises NotFound for an unknown point; Refused for an empty answer, for "not needed" without a
    reason or where nothing can set the point aside, and for another answer to what is no question.
    """
    with writing("answer", who=who, machine=machine, at=at) as pen:
        points = rules.open_points(pen.now)
        key = find_point(pen.book, point, points)
        said = _in_the_books_spelling(pen.book, key, answer)
        asked = _check_answer(pen.book, points, key, said, reason)
        for older in pen.machine.answers.filter(point=key, withdrawn=False):
            older.withdrawn = True
            pen.save(older)
        row = AnswerRow(machine=pen.machine, point=key, answer=said, by=pen.who, at=pen.at)
        row.reason = reason.strip()
        pen.save(row)
        because = f", because {row.reason}" if row.reason else ""
        pen.says = f"{asked} {said}{because}."
    return pen.entry


def pass_gate(
    *, machine: str | Machine, gate: str, who: str, at: datetime | None = None
) -> DiaryEntry:
    """Pass a gate, in this person's name.

    Raises Refused with every point that is still open, NotFound for an unknown gate.
    """
    with writing("pass gate", who=who, machine=machine, at=at) as pen:
        key = find_gate(pen.book, gate)
        name = pen.book.gates[key].name
        if key in pen.now.passed:
            raise Refused([f"{name} is passed already: the diary shows who passed it and when."])
        refuse(rules.why_not_pass(pen.now, key))
        pen.rests_on |= rests.passing(pen.now) | rests.searched(pen.machine)
        pen.save(GatePass(machine=pen.machine, gate=key, by=pen.who, at=pen.at))
        pen.says = f"Passed: {name}."
    return pen.entry


def _in_the_books_spelling(book: Book, key: str, typed: str) -> str:
    """The answer as the book lists it, where it is one of those; else as typed."""
    said = " ".join(typed.split())
    listed = (
        each
        for gate in book.gates.values()
        if key in gate.points
        for each in gate.points[key].answers
    )
    spelled = {each.casefold(): each for each in (*listed, NOT_NEEDED)}
    return spelled.get(said.rstrip(" .!").casefold(), said)


def _check_answer(
    book: Book, points: Mapping[str, OpenPoint], key: str, said: str, reason: str
) -> str:
    """What is asked. Raises Refused for an answer that settles nothing and looks as if it did."""
    question = next((gate.points[key] for gate in book.gates.values() if key in gate.points), None)
    asked = question.ask if question else f"{points[key].what}:"
    hard = question.hard if question else points[key].hard
    if not said:
        raise Refused([f"{asked} An empty answer says nothing: say what you found."])
    if said.casefold() != NOT_NEEDED:
        if question is None:
            raise Refused([f"{asked} {points[key].would_do}; or “{NOT_NEEDED}”, and why."])
        return asked
    if hard:
        raise Refused([f"{asked} This cannot be set aside: do it."])
    if not reason.strip():
        raise Refused([f"{asked} To set it aside, say why it is not needed."])
    return asked
