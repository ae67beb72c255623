"""The single points of a gate: which there are, and which of them are still open."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from shimstock.trade.machine.book import Gate
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import MAY_BE_CLOSED_OVER, JointWord, PartWord, stands
from shimstock.trade.reach.answers import answer_to, answered, asked, would_settle
from shimstock.trade.reach.goals import closing_order
from shimstock.trade.reach.mates import against_set
from shimstock.trade.reach.pieces import piece_name
from shimstock.trade.reach.readings import against_finished, against_reading
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import Target
from shimstock.trade.reach.way import way_in

LEAK_CHECK = 5.0
"""Minutes to look at one joint with the engine warm; a stand-in figure."""
READING = 10.0
"""Minutes to take one reading again; a stand-in figure."""
WET = frozenset({JointWord.WEEPING, JointWord.LEAKING})

Kind = Literal["gate", "close", "open again", "leak check", "part", "reading", "set", "question"]


@dataclass(frozen=True)
class OpenPoint:
    """One thing that still stands before a gate.

    key: what an answer is kept under. where: key of the joint, part, figure, set, question or gate.
    minutes: 0 where nobody can say. hard: no reason written down can set it aside.
    """

    key: str
    kind: Kind
    where: str
    what: str
    minutes: float
    hard: bool
    would_do: str


Looked = OpenPoint | None
"""A point that was looked at: open, or nothing where it is closed."""


def points_of(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    """Every point of a gate in working order."""
    yield from _gates_before(now, gate)
    if gate.joints == "paint joints dry":
        yield from _paint_joints(now)
    if gate.joints == "all closed":
        yield from _closed_joints(now)
    if gate.parts:
        yield from _parts(now)
    if gate.readings:
        yield from _readings(now, gate)
    yield from _figures(now, gate)
    if gate.sets:
        yield from _sets(now)
    yield from _questions(now, gate)


def _gates_before(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    for key in gate.passed_before:
        name = now.book.gates[key].name
        would = f"pass {name} first"
        point = OpenPoint(f"gate:{key}", "gate", key, f"{name} is not passed", 0.0, True, would)
        yield None if key in now.passed else point
        yield from _taken_back(now, now.book.gates[key])


def _taken_back(now: MachineNow, gate: Gate) -> Iterator[OpenPoint]:
    """Hard questions of a gate that comes before, answered otherwise since it was passed."""
    for point in _questions(now, gate):
        if point and point.hard and answer_to(now, point.key) is not None:
            yield point


def is_dry(now: MachineNow, joint: str) -> bool:
    """True where a joint is leak-checked, or was never disturbed and stayed dry under chalk."""
    state = now.joint(joint)
    untouched = state.word is JointWord.UNDISTURBED and state.dry_chalked_on is not None
    return state.word is JointWord.LEAK_CHECKED or untouched


def _paint_joints(now: MachineNow) -> Iterator[Looked]:
    """Joints on paint: the innermost open one first, then those to open again, then the checks."""
    keys = now.book.on_paint
    opened = closing_order(now.book, (key for key in keys if now.joint(key).is_open))
    wet = tuple(key for key in keys if now.joint(key).word in WET)
    for key in (*opened, *wet, *(k for k in keys if k not in {*opened, *wet})):
        yield None if is_dry(now, key) else _not_dry(now, key)


def _not_dry(now: MachineNow, key: str) -> OpenPoint:
    joint, state = now.book.joints[key], now.joint(key)
    what = f"{joint.name} {stands(state.word)}"
    name = f"joint:{key}"
    if state.is_open:
        would = "close it, run warm and look for leaks"
        return OpenPoint(name, "close", key, what, joint.close + LEAK_CHECK, True, would)
    if state.word in WET:
        minutes = way_in(now, [Target("joint", key)]).minutes + LEAK_CHECK
        return OpenPoint(name, "open again", key, what, minutes, True, "open it again and reseal")
    if state.word in (JointWord.UNDISTURBED, JointWord.TO_BE_OPENED):
        would = "dust it with chalk, run warm, and look whether it stays dry"
        if state.word is JointWord.TO_BE_OPENED:
            would = "open and reseal it as planned, or leave it and chalk it dry"
        what = f"{joint.name} is {state.word}, not seen dry"
        return OpenPoint(name, "leak check", key, what, LEAK_CHECK, True, would)
    what = f"{joint.name} is {state.word}, not leak-checked"
    return OpenPoint(name, "leak check", key, what, LEAK_CHECK, True, "run warm and look for leaks")


def _closed_joints(now: MachineNow) -> Iterator[Looked]:
    book = now.book
    for key in closing_order(book, now.open_joints):
        joint = book.joints[key]
        what = f"{joint.name} {stands(now.joint(key).word)}"
        yield OpenPoint(f"joint:{key}", "close", key, what, joint.close, False, "close it")
    yield from (None for key in book.joints if not now.joint(key).is_open)


def _parts(now: MachineNow) -> Iterator[Looked]:
    for part in now.book.parts:
        for piece, state in now.pieces_of(part).items():
            yield None if state.word in MAY_BE_CLOSED_OVER else _not_there(now, part, piece)


def _not_there(now: MachineNow, part: str, piece: str) -> OpenPoint:
    word = now.piece(part, piece).word
    key = f"part:{part}/{piece}" if piece else f"part:{part}"
    what = f"{piece_name(now.book, part, piece)} is {word}"
    hard = word is PartWord.REJECTED
    return OpenPoint(key, "part", part, what, 0.0, hard, "fit one that is passed")


def _readings(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    read = {(figure, piece): None for figure, piece, _ in now.verdicts}
    for figure, piece in read:
        latest = now.latest(figure, piece)
        entry = now.book.measures.get(figure)
        if latest is None or entry is None or figure in gate.figures:
            continue
        if entry.running and not gate.running:
            continue
        yield _reading(figure, piece, against_reading(now, figure, piece, latest))


def _figures(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    for figure in gate.figures:
        for piece in now.book.parts[now.book.measures[figure].of].instances:
            yield _reading(figure, piece, against_finished(now, figure, piece, hard=True))


def _reading(figure: str, piece: str, reason: Reason | None) -> Looked:
    if reason is None:
        return None
    key = f"reading:{figure}/{piece}" if piece else f"reading:{figure}"
    what = f"{reason.what}: {reason.why}"
    return OpenPoint(key, "reading", figure, what, READING, reason.hard, reason.would_do)


def _sets(now: MachineNow) -> Iterator[Looked]:
    for name in now.book.sets:
        reasons = tuple(against_set(now, name))
        if not reasons:
            yield None
            continue
        what = f"{reasons[0].what}: {'; '.join(reason.why for reason in reasons)}"
        would = reasons[-1].would_do
        yield OpenPoint(f"set:{name}", "set", name, what, 0.0, True, would)


def _questions(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    for key, point in gate.points.items():
        if not asked(now, gate, key):
            continue
        if answered(now, key, point):
            yield None
        else:
            would = would_settle(point)
            yield OpenPoint(key, "question", key, point.ask, point.minutes, point.hard, would)
