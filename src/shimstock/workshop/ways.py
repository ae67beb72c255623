"""A way in: its joints as they stand, as plain values, and in words how sure it is."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.trade.machine.fastened import fastened_by

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book, Joint
    from shimstock.trade.machine.state import JointNow
    from shimstock.trade.reach.due import CautionDue
    from shimstock.trade.reach.target import Target
    from shimstock.trade.reach.way import Way
    from shimstock.workshop.looking import Seen


@dataclass(frozen=True)
class Step:
    """A joint on a way: how it stands, and what opening it takes."""

    key: str
    entry: Joint
    stands: JointNow


def step_of(seen: Seen, key: str) -> Step:
    """One joint of a way as it stands."""
    return Step(key, seen.book.joints[key], seen.now.joint(key))


def way_data(way: Way) -> dict[str, Any]:
    """A way in as plain values."""
    joints = way.now.book.joints
    return {
        "opens": [
            {"joint": key, "name": joints[key].name, "open": joints[key].open,
             "close": joints[key].close, "hands": joints[key].hands,
             "fastened_by": fastened_by(joints[key]), "shows": joints[key].shows}
            for key in way.opens
        ],
        "closes": list(way.closes),
        "open_already": list(way.open_already),
        "minutes_open": way.minutes_open,
        "minutes_close": way.minutes_close,
        "uses": [{"name": u.name, "count": u.count, "joints": list(u.joints)} for u in way.uses],
        "cautions": [
            {"name": due.caution.name, "do": due.caution.do, "never": due.caution.never,
             "defer": due.caution.defer, "joints": list(due.joints)}
            for due in way.cautions
        ],
        "measure_first": [
            {"joint": each.joint, "figure": each.figure, "by": each.by, "known": each.known}
            for each in way.measure_first
        ],
        "cover_tonight": list(way.cover_tonight),
        "also_in_reach": list(way.reaches),
        "alternatives": way.alternatives,
        "proven": way.proven,
    }  # fmt: skip


def how_sure(way: Way) -> str:
    """How many ways there were, and that this is the cheapest of them."""
    if way.alternatives < 2:
        return "There is no other way."
    proof = ", proven" if way.proven else ""
    return f"Cheapest of {way.alternatives} ways{proof}."


def cautions_on_the_way(
    seen: Seen, joints: Iterable[str], with_way: bool
) -> tuple[CautionDue, ...]:
    """What can hurt where joints are opened; with_way: with all that is opened before them.

    joints: by key, mark or name. Raises NotFound.
    """
    from shimstock.trade.reach.due import cautions_due
    from shimstock.workshop import rules
    from shimstock.workshop.find import find_joint

    keys = [find_joint(seen.book, joint) for joint in joints]
    if with_way:
        keys = [each for key in keys for each in rules.joints_on_the_way(seen.now, key)]
    return cautions_due(seen.book, keys)


def way_steps(seen: Seen, way: Way) -> list[Step]:
    """The joints to open on a way, in order, each as it stands."""
    return [step_of(seen, key) for key in way.opens]


def targets_like(book: Book, typed: str) -> list[Target]:
    """Joints and parts that have every word of a text in their names, where none bears it."""
    from shimstock.trade.reach.target import Target

    words = typed.casefold().split()
    things = [Target("joint", key) for key in book.joints] + [
        Target("part", key) for key in book.parts
    ]
    return [each for each in things if all(word in each.name(book).casefold() for word in words)]


def known_and_not(book: Book, typed: Iterable[str]) -> tuple[list[str], list[str]]:
    """Which of some names the book knows as joints or parts, and which it does not."""
    from shimstock.trade.reach.target import UnknownName
    from shimstock.workshop.place_typed import target_typed

    known: list[str] = []
    unknown: list[str] = []
    for each in typed:
        try:
            target_typed(book, each)
            known.append(each)
        except UnknownName:
            unknown.append(each)
    return known, unknown
