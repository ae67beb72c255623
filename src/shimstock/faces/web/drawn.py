"""The drawing of a machine for a page: who sits on whom, each row to tap, groups to fold."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from shimstock.faces.paper.signs import JOINT_SIGNS, PART_SIGNS, Sign
from shimstock.faces.paper.tree import Row, joint_label, panels, row_pieces
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import JointWord, PartWord
from shimstock.workshop.wording import called

AT_REST: frozenset[str] = frozenset({JointWord.UNDISTURBED, PartWord.FITTED})


@dataclass(frozen=True)
class DrawnJoint:
    """A joint on its line."""

    key: str
    label: str
    name: str
    word: JointWord
    bare: bool
    """Open and not covered."""

    @property
    def at_rest(self) -> bool:
        """Nobody has touched it."""
        return self.word in AT_REST


@dataclass(frozen=True)
class DrawnPart:
    """A part, and the states of its pieces, each once."""

    key: str
    name: str
    mark: str
    words: tuple[PartWord, ...]
    on: str
    """The part it sits on, where that stands in another group."""

    @property
    def at_rest(self) -> bool:
        """Nobody has touched any piece of it."""
        return AT_REST.issuperset(self.words)


@dataclass(frozen=True)
class DrawnRow:
    """One row; deep: how far from the outermost part, for its place on the page."""

    deep: int
    joint: DrawnJoint | None
    part: DrawnPart | None


@dataclass(frozen=True)
class Count:
    """How many bear one sign. word: one of the states drawn with it. says: what they all mean."""

    word: JointWord | PartWord
    number: int
    says: str


@dataclass(frozen=True)
class DrawnGroup:
    """One group of the book."""

    title: str
    rows: tuple[DrawnRow, ...]
    counts: tuple[Count, ...]
    """How many joints and pieces stand otherwise than undisturbed and fitted."""
    unfolded: bool
    """A joint in it stands open and is not covered, or is among those moved last."""


@dataclass(frozen=True)
class Drawing:
    """Every group of a machine, and the states that are drawn, in their usual order."""

    groups: tuple[DrawnGroup, ...]
    legend: tuple[JointWord | PartWord, ...]


def drawn(now: MachineNow) -> Drawing:
    """A machine's book with its parts and joints as they stand."""
    groups = tuple(_group(now, panel.title, panel.rows) for panel in panels(now.book))
    rows = [row for group in groups for row in group.rows]
    joints = {row.joint.word for row in rows if row.joint}
    parts = {word for row in rows if row.part for word in row.part.words}
    words: tuple[JointWord | PartWord, ...] = (
        *(word for word in JointWord if word in joints),
        *(word for word in PartWord if word in parts),
    )
    return Drawing(groups, words)


def _group(now: MachineNow, title: str, rows: tuple[Row, ...]) -> DrawnGroup:
    found = tuple(DrawnRow(len(row.rails), _joint(now, row.joint), _part(now, row)) for row in rows)
    joints = [row.joint for row in found if row.joint]
    pieces = [piece for row in rows for piece in row_pieces(now, row).values()]
    counts = _counts([each.word for each in joints] + [each.word for each in pieces])
    last = _moved_last(now)
    unfolded = any(each.bare or each.key in last for each in joints)
    return DrawnGroup(title, found, counts, unfolded)


def _counts(words: list[JointWord | PartWord]) -> tuple[Count, ...]:
    """States other than at rest, those together that share a sign."""
    moved = [word for word in words if word not in AT_REST]
    numbers = Counter(_sign(word) for word in moved)
    first = {_sign(word): word for word in reversed(moved)}
    return tuple(Count(first[sign], number, sign.word) for sign, number in numbers.items())


def _sign(word: JointWord | PartWord) -> Sign:
    return JOINT_SIGNS[word] if isinstance(word, JointWord) else PART_SIGNS[word]


def _moved_last(now: MachineNow) -> frozenset[str]:
    """Joints that came to stand as they do on the last day on which any did."""
    days = {key: joint.since for key, joint in now.joints.items() if joint.since}
    last = max(days.values(), default=None)
    return frozenset(key for key, day in days.items() if day == last)


def _joint(now: MachineNow, key: str | None) -> DrawnJoint | None:
    if key is None:
        return None
    stands = now.joint(key)
    bare = stands.is_open and not stands.covered
    return DrawnJoint(key, joint_label(now.book, key), now.book.joints[key].name, stands.word, bare)


def _part(now: MachineNow, row: Row) -> DrawnPart | None:
    if row.part is None:
        return None
    part, on = now.book.parts[row.part], now.book.parts[row.on].name if row.on else ""
    words = tuple(dict.fromkeys(piece.word for piece in row_pieces(now, row).values()))
    return DrawnPart(row.part, called(part.name, row.piece), part.mark or "", words, on)
