"""The single points of a gate: which there are, and which of them are still open."""

from __future__ import annotations

from collections.abc import Iterator

from shimstock.trade.machine.book import Gate
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import MAY_BE_CLOSED_OVER, JointWord, PartWord, stands
from shimstock.trade.reach.answers import answer_to, answered, asked, would_settle
from shimstock.trade.reach.dry import WET, is_dry
from shimstock.trade.reach.faults_standing import faults_before
from shimstock.trade.reach.goals import closing_order
from shimstock.trade.reach.mates import against_set, pieces_of_set
from shimstock.trade.reach.moves import torque_due
from shimstock.trade.reach.not_torqued import not_torqued
from shimstock.trade.reach.open_point import Closed, Looked, OpenPoint, by_act
from shimstock.trade.reach.pieces import piece_name
from shimstock.trade.reach.readings import against_finished, against_reading
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import Target
from shimstock.trade.reach.way import way_in

LEAK_CHECK = 5.0
"""Minutes to look at one joint with the engine warm; a stand-in figure."""
READING = 10.0
"""Minutes to take one reading again; a stand-in figure."""
UNTOUCHED = frozenset({JointWord.UNDISTURBED, JointWord.TO_BE_OPENED})


def points_of(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    """Every point of a gate in working order."""
    yield from _gates_before(now, gate)
    if gate.joints == "all closed":
        yield from faults_before(now, gate)
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
        yield Closed.SETTLED if key in now.passed else point
        yield from _taken_back(now, now.book.gates[key])


def _taken_back(now: MachineNow, gate: Gate) -> Iterator[OpenPoint]:
    """Hard questions of a gate that comes before, answered otherwise since it was passed."""
    for point in _questions(now, gate):
        if isinstance(point, OpenPoint) and point.hard and answer_to(now, point.key) is not None:
            yield point


def _paint_joints(now: MachineNow) -> Iterator[Looked]:
    """Joints on paint: the innermost open one first, then those to open again, then the checks."""
    keys = now.book.on_paint
    opened = closing_order(now.book, (key for key in keys if now.joint(key).is_open))
    wet = tuple(key for key in keys if now.joint(key).word in WET)
    for key in (*opened, *wet, *(k for k in keys if k not in {*opened, *wet})):
        yield Closed.SETTLED if is_dry(now, key) else _not_dry(now, key)


def _not_dry(now: MachineNow, key: str) -> OpenPoint:
    joint, state = now.book.joints[key], now.joint(key)
    what = f"{joint.name} {stands(state.word)}"
    name = f"joint:{key}"
    if state.is_open:
        would = "close it, run warm and look for leaks"
        return OpenPoint(name, "close", key, what, joint.close + LEAK_CHECK, True, would)
    if state.word in WET:
        return _wet(now, key, hard=True)
    if state.word in (JointWord.UNDISTURBED, JointWord.TO_BE_OPENED):
        would = "dust it with chalk, run warm or stand it full, and look whether it stays dry"
        if state.word is JointWord.TO_BE_OPENED:
            would = "open and reseal it as planned, or leave it and chalk it dry"
        what = f"{joint.name} is {state.word}, not seen dry"
        return OpenPoint(name, "leak check", key, what, LEAK_CHECK, True, would)
    what = f"{joint.name} is {state.word}, not leak-checked"
    would = f"{'torque it, then ' if torque_due(now, key) else ''}run warm and look for leaks"
    return OpenPoint(name, "leak check", key, what, LEAK_CHECK, True, would)


def _closed_joints(now: MachineNow) -> Iterator[Looked]:
    book = now.book
    for key in closing_order(book, now.open_joints):
        joint = book.joints[key]
        what = f"{joint.name} {stands(now.joint(key).word)}"
        yield OpenPoint(f"joint:{key}", "close", key, what, joint.close, False, "close it")
    yield from not_torqued(now)
    shut = (key for key in book.joints if not now.joint(key).is_open)
    for key in shut:
        if now.joint(key).word in WET:
            yield _wet(now, key, hard=False)
        elif not torque_due(now, key):
            yield by_act(now.joint(key).word not in UNTOUCHED)


def _wet(now: MachineNow, key: str, *, hard: bool) -> OpenPoint:
    what = f"{now.book.joints[key].name} {stands(now.joint(key).word)}"
    minutes = way_in(now, [Target("joint", key)]).minutes + LEAK_CHECK
    would = "open it again and reseal"
    return OpenPoint(f"joint:{key}", "open again", key, what, minutes, hard, would)


def _parts(now: MachineNow) -> Iterator[Looked]:
    for part in now.book.parts:
        for piece, state in now.pieces_of(part).items():
            if state.word in MAY_BE_CLOSED_OVER:
                yield by_act(state.word is not PartWord.FITTED)
            else:
                yield _not_there(now, part, piece)


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
        return Closed.SETTLED
    key = f"reading:{figure}/{piece}" if piece else f"reading:{figure}"
    what = f"{reason.what}: {reason.why}"
    return OpenPoint(key, "reading", figure, what, READING, reason.hard, reason.would_do)


def _sets(now: MachineNow) -> Iterator[Looked]:
    for name in now.book.sets:
        reasons = tuple(against_set(now, name))
        if not reasons:
            members = pieces_of_set(now, name).values()
            yield by_act(any(state.word is not PartWord.FITTED for state in members))
            continue
        what = f"{reasons[0].what}: {'; '.join(reason.why for reason in reasons)}"
        would = reasons[-1].would_do
        yield OpenPoint(f"set:{name}", "set", name, what, 0.0, True, would)


def _questions(now: MachineNow, gate: Gate) -> Iterator[Looked]:
    for key, point in gate.points.items():
        if not asked(now, gate, key):
            continue
        if answered(now, key, point):
            yield Closed.SETTLED
        else:
            would = would_settle(point)
            yield OpenPoint(key, "question", key, point.ask, point.minutes, point.hard, would)
