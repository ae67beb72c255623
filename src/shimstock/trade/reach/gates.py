"""What still stands between the machine and a risk: paint, first start, road, handing over."""

from __future__ import annotations

from dataclasses import dataclass, field

from shimstock.trade.machine.book import Gate
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.numbers.working import Working
from shimstock.trade.reach.answers import set_aside
from shimstock.trade.reach.dry import is_dry
from shimstock.trade.reach.due import CautionDue, cautions_due
from shimstock.trade.reach.faults_standing import faults_before
from shimstock.trade.reach.not_torqued import TORQUE, minutes_for_torque
from shimstock.trade.reach.open_point import Closed, OpenPoint
from shimstock.trade.reach.points import LEAK_CHECK, points_of
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import Target, UnknownName, offer
from shimstock.trade.reach.way import way_in

RUN_FOR = ("close", "leak check")
"""Points of joints on paint for which the engine is run warm."""
SOURCE = "times of the joints in the book; checks and readings at stand-in times"


@dataclass(frozen=True)
class GateView:
    """A gate as it stands today.

    open_points: what still blocks it, in working order. settled: points that somebody here has seen
    to. as_they_came: those of things that nobody has touched since the machine was booked in.
    dry, on_paint: joints on paint that are seen dry, of how many; both 0 where the gate does not
    ask. minutes: work that can be foreseen; leaking joints are opened again together.
    run_first: what to do before the engine is run for this gate; "" where it may be run.
    """

    key: str
    name: str
    open_points: tuple[OpenPoint, ...]
    settled: int
    as_they_came: int
    dry: int
    on_paint: int
    minutes: float
    cautions: tuple[CautionDue, ...]
    working: Working = field(repr=False)
    run_first: str = ""

    @property
    def may_be_passed(self) -> bool:
        """True where nothing stands against it."""
        return not self.open_points

    @property
    def says(self) -> str:
        """The state of the gate in one line."""
        checked = (
            f"{self.dry} of {self.on_paint} leak-checked or chalk-dry; " if self.on_paint else ""
        )
        if self.may_be_passed:
            return f"{checked}nothing stands against {self.name}; {self.counted}"
        foreseen = f"{self.minutes:g} min that can be foreseen"
        return f"{checked}{self.blocks} {self.name}; {self.counted}; {foreseen}"

    @property
    def blocks(self) -> str:
        """How many points block it: 9 points block."""
        number = len(self.open_points)
        return "1 point blocks" if number == 1 else f"{number} points block"

    @property
    def counted(self) -> str:
        """The other points: 3 settled, 194 as they came and not looked at."""
        came = f", {self.as_they_came} as they came and not looked at" if self.as_they_came else ""
        return f"{self.settled} settled{came}"


def gate(now: MachineNow, key: str) -> GateView:
    """Everything that stands against passing a gate, in working order.

    key: a gate of the book. Points that a person signed as not needed, with a reason, are closed,
    unless they are hard. Raises UnknownName for a gate the book does not know.
    """
    book = now.book
    if key not in book.gates:
        raise UnknownName(f"{key!r} is not a gate of {book.book}; {offer(key, book.gates)}")
    entry = book.gates[key]
    looked = list(points_of(now, entry))
    stand = [p for p in looked if isinstance(p, OpenPoint)]
    still = tuple(p for p in stand if p.hard or not set_aside(now, p.key))
    paint = book.on_paint if entry.joints == "paint joints dry" else ()
    minutes, working = _time(now, still)
    own = tuple(CautionDue(c, book.cautions[c], ()) for c in entry.cautions if c in book.cautions)
    joints = [p.where for p in still if p.kind in ("close", "open again")]
    due = (*own, *(c for c in cautions_due(book, joints) if c.key not in entry.cautions))
    for caution in due:
        working.caution(str(caution))
    dry = sum(is_dry(now, joint) for joint in paint)
    came = looked.count(Closed.AS_IT_CAME)
    counts = (len(looked) - len(still) - came, came, dry, len(paint))
    first = _run_first(now, entry, still)
    return GateView(key, entry.name, still, *counts, minutes, due, working, first)


def may_pass(now: MachineNow, key: str) -> tuple[Reason, ...]:
    """What stands against passing a gate today; nothing where it may be passed.

    Raises UnknownName for a gate the book does not know.
    """
    view = gate(now, key)
    return tuple(Reason(view.name, p.what, p.would_do, p.hard) for p in view.open_points)


def _run_first(now: MachineNow, entry: Gate, points: tuple[OpenPoint, ...]) -> str:
    """What to do before the engine is run, where joints are to be looked at running.

    A fault that stands goes before everything: first start may have been passed before it showed.
    """
    if entry.joints != "paint joints dry" or not any(point.kind in RUN_FOR for point in points):
        return ""
    gates = now.book.gates
    ran = (key for gate in gates.values() if gate.running for key in gate.passed_before)
    start = {key: gates[key] for key in ran if not gates[key].running}
    for before in (*start.values(), entry):
        for fault in faults_before(now, before):
            return f"Nothing is run: {fault.what}; {fault.would_do}."
    waits = (gate.name for key, gate in start.items() if key not in now.passed)
    return next((f"Nothing is run before {name} is passed." for name in waits), "")


def _time(now: MachineNow, points: tuple[OpenPoint, ...]) -> tuple[float, Working]:
    """Minutes for all points; joints to open again, or to torque, are got at in one go."""
    w = Working(source=SOURCE)
    terms, total = [], 0.0
    again = [point for point in points if point.kind == "open again"]
    if again:
        way = way_in(now, [Target("joint", point.where) for point in again])
        w.given("T_a", way.minutes, "min", meaning="open the leaking joints again, and close")
        w.given("n_a", len(again), "joints")
        w.given("t_l", LEAK_CHECK, "min", meaning="look for leaks at one joint, stand-in figure")
        total += w.step("T_r", "T_a + n_a·t_l", way.minutes + len(again) * LEAK_CHECK, "min")
        terms.append("T_r")
    torque = [point.where for point in points if point.kind == "torque"]
    if torque:
        got_at = minutes_for_torque(now, torque)
        w.given("T_o", got_at, "min", meaning="get at what is not torqued")
        w.given("n_t", len(torque), "joints")
        w.given("t_t", TORQUE, "min", meaning="tighten one joint to its figure, stand-in figure")
        total += w.step("T_t", "T_o + n_t·t_t", got_at + len(torque) * TORQUE, "min")
        terms.append("T_t")
    for point in points:
        if point.kind not in ("open again", "torque") and point.minutes:
            symbol = f"t_{len(terms) + 1}"
            total += w.given(symbol, point.minutes, "min", meaning=point.what)
            terms.append(symbol)
    w.step("T", " + ".join(terms) or "0", total, "min", meaning="that can be foreseen")
    return total, w
