"""The gates: which were passed, and what still stands before the others."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from shimstock.faces.paper.figures import name_of
from shimstock.faces.paper.kept import Kept, day_of
from shimstock.faces.paper.tree import joint_label
from shimstock.faces.paper.wording import Under, day, under
from shimstock.trade.machine.book import Gate
from shimstock.trade.reach.gates import gate
from shimstock.trade.reach.open_point import OpenPoint

TITLES = {
    "gate": "gates before it",
    "fault": "faults that stand",
    "close": "joints to close",
    "torque": "joints closed, not torqued",
    "open again": "joints to open again",
    "leak check": "joints not seen dry",
    "part": "parts not ready",
    "reading": "figures not right",
    "set": "sets",
    "question": "not answered",
}


@dataclass(frozen=True)
class GateTold:
    """One gate: who passed it, or what still stands before it."""

    name: str
    passed: str
    points: int
    says: str
    open_points: tuple[Under, ...]
    answered: tuple[str, ...]


def gates_told(kept: Kept) -> tuple[GateTold, ...]:
    """Every gate of the book, in its order; a list that a gate before it has is not told again."""
    told: list[GateTold] = []
    for key, entry in kept.book.gates.items():
        told.append(_short(_gate(kept, key, entry), told))
    return tuple(told)


def _gate(kept: Kept, key: str, entry: Gate) -> GateTold:
    view = gate(kept.now, key)
    points = len(view.open_points)
    return GateTold(
        name=view.name,
        passed=_passed(kept, key),
        points=points,
        says=f"not passed; {view.blocks if points else 'nothing blocks'}; {view.counted}",
        open_points=under((TITLES[p.kind], _named(kept, p)) for p in view.open_points),
        answered=tuple(_answers(kept, entry)),
    )


def _passed(kept: Kept, key: str) -> str:
    row = kept.machine.gates_passed.filter(gate=key, withdrawn=False).first()
    return f"passed by {row.by} on {day(day_of(row.at))}" if row else ""


def _named(kept: Kept, point: OpenPoint) -> str:
    """A point in a few words: joints by their number, readings by their name."""
    if point.kind in ("close", "torque", "open again", "leak check"):
        return joint_label(kept.book, point.where)
    if point.kind == "reading":
        _, _, piece = point.key.partition("/")
        return name_of(kept.book.measures[point.where], piece)
    return point.what


def _answers(kept: Kept, entry: Gate) -> Iterator[str]:
    for key, point in entry.points.items():
        answer = kept.now.answers.get(key)
        if answer is not None:
            why = f", because {answer.reason}" if answer.reason else ""
            yield f"{point.ask} {answer.answer}{why} ({answer.by}, {day(answer.on)})"


def _short(told: GateTold, before: list[GateTold]) -> GateTold:
    """The gate with lists that stand under a gate before it put as a reference."""
    lists = []
    for each in told.open_points:
        same = [other.name for other in before if each in other.open_points]
        short = len(" ".join(each.items)) < 60
        lists.append(each if short or not same else Under(each.title, (f"as before {same[0]}",)))
    return replace(told, open_points=tuple(lists))
