"""What to look out for when joints are opened: cautions, heavy steps, packs to measure first."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from shimstock.trade.machine.book import Book, Caution
from shimstock.trade.machine.state import MachineNow


@dataclass(frozen=True)
class CautionDue:
    """A caution that belongs to the work, and the joints that call it up."""

    key: str
    caution: Caution
    joints: tuple[str, ...]

    def __str__(self) -> str:
        said = (f"{self.caution.name}: {self.caution.do}", self.caution.never)
        defer = (f"Ask: {self.caution.defer}",) if self.caution.defer else ()
        return ". ".join(text.rstrip(" .") for text in (*said, *defer)) + "."


@dataclass(frozen=True)
class HeavyStep:
    """A joint that needs more than one pair of hands, or a hoist.

    lifts: name of the heavy part; empty where only the hands are needed.
    """

    joint: str
    hands: int
    lifts: str


@dataclass(frozen=True)
class MeasureFirst:
    """An old pack to measure before it is lost, because its thickness sets a figure.

    known: the thickness found, where somebody has written it down already.
    """

    joint: str
    figure: str
    by: str
    known: str


def cautions_due(book: Book, joints: Iterable[str]) -> tuple[CautionDue, ...]:
    """Cautions that joints call up by their danger words, each once, with the joints."""
    keys = list(joints)
    due = (
        CautionDue(name, caution, tuple(k for k in keys if _calls(book, k, caution)))
        for name, caution in book.cautions.items()
    )
    return tuple(each for each in due if each.joints)


def open_before(now: MachineNow, joint: str) -> tuple[str, ...]:
    """Joints that stand open before a joint and before one another, in the book's order."""
    found: set[str] = set()
    ahead = [joint]
    while ahead:
        needs = now.book.joints[ahead.pop()].needs
        new = {key for ways in needs for way in ways for key in way} & now.open_joints - found
        found |= new
        ahead += new
    return tuple(key for key in now.book.joints if key in found)


def _calls(book: Book, joint: str, caution: Caution) -> bool:
    return not set(caution.dangers).isdisjoint(book.joints[joint].dangers)


def heavy_steps(book: Book, joints: Iterable[str]) -> tuple[HeavyStep, ...]:
    """Joints for two people or a hoist, in the order given."""
    steps = []
    for key in joints:
        joint = book.joints[key]
        moved = book.parts[joint.between[0]]
        if joint.hands > 1 or moved.heavy:
            lifts = moved.name if moved.heavy else ""
            steps.append(HeavyStep(key, max(joint.hands, 2), lifts))
    return tuple(steps)


def packs_to_measure(now: MachineNow, joints: Iterable[str]) -> tuple[MeasureFirst, ...]:
    """Old gaskets, shim packs and adjusters to measure before the joints are opened."""
    return tuple(
        MeasureFirst(key, settled.figure, settled.by, now.joint(key).thickness_found or "")
        for key in joints
        for settled in now.book.joints[key].settles
    )
