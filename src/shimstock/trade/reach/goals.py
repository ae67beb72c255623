"""A wish to reach something, put as joints that must be open."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import MachineNow
from shimstock.trade.reach.ladder import Alternative, Ladder, Needs, opening_order
from shimstock.trade.reach.pieces import pieces_at
from shimstock.trade.reach.target import Target

SECONDS = 60


def ladder_to(now: MachineNow, targets: Sequence[Target], *, take_off: bool) -> Ladder:
    """The machine's joints and what is wanted, as bare numbers in the book's order."""
    book = now.book
    place = {key: number for number, key in enumerate(book.joints)}
    needs: dict[int, Needs] = {
        place[key]: tuple(_alternatives(joint.needs[i], place) for i in range(len(joint.needs)))
        for key, joint in book.joints.items()
    }
    needs[len(place)] = tuple(
        _alternatives(entry, place) for target in targets for entry in goal(book, target, take_off)
    )
    cost = tuple(round((joint.open + joint.close) * SECONDS) for joint in book.joints.values())
    return Ladder(cost, needs, frozenset(place[key] for key in place.keys() & now.open_joints))


def _alternatives(entry: Iterable[Iterable[str]], place: dict[str, int]) -> tuple[Alternative, ...]:
    return tuple(frozenset(place[key] for key in alternative) for alternative in entry)


Entry = tuple[tuple[str, ...], ...]
"""Alternatives, each a list of joints that must all be open."""


def goal(book: Book, target: Target, take_off: bool) -> tuple[Entry, ...]:
    """What must be open for a target: every entry, each by one of its alternatives."""
    if target.kind == "joint":
        return (((target.key,),),)
    if take_off and (holding := holding_joints(book, target.key, target.piece)):
        return tuple(((key,),) for key in holding)
    pieces = (target.piece,) if target.piece else book.parts[target.key].instances
    ways = (reaching_joints(book, target.key, piece) for piece in pieces)
    return tuple(dict.fromkeys(tuple((key,) for key in way) for way in ways if way))


def reaching_joints(book: Book, part: str, piece: str) -> tuple[str, ...]:
    """Joints that bring one piece of a part into reach: those that show it, and its own."""
    return tuple(
        key
        for key, joint in book.joints.items()
        if (part in joint.reaches or joint.between[0] == part)
        and piece in pieces_at(book, key, part)
    )


def holding_joints(book: Book, part: str, piece: str = "") -> tuple[str, ...]:
    """Joints between a part, with all that sits on it, and the rest of the machine.

    piece: which of several; all of them where it is empty.
    """
    with_it = sitting_on(book, part)
    return tuple(
        key
        for key, joint in book.joints.items()
        if any(p in with_it for p in joint.between)
        and any(p not in with_it for p in joint.between)
        and not (piece and part in joint.between and piece not in pieces_at(book, key, part))
    )


def sitting_on(book: Book, part: str) -> frozenset[str]:
    """A part and everything that sits on it."""
    found = {part}
    while more := {k for k, p in book.parts.items() if p.sits_on in found and k not in found}:
        found |= more
    return frozenset(found)


def in_reach(book: Book, opened: Iterable[str]) -> frozenset[str]:
    """Parts that open joints bring into reach."""
    joints = [book.joints[key] for key in opened]
    return frozenset(part for joint in joints for part in (joint.between[0], *joint.reaches))


def closing_order(book: Book, joints: Iterable[str]) -> tuple[str, ...]:
    """Open joints in the order in which they can be closed: the innermost first."""
    keys = list(book.joints)
    place = {key: number for number, key in enumerate(keys)}
    among = sorted(place[key] for key in joints if key in place)
    here = frozenset(among)
    needs: dict[int, Needs] = {}
    for number in among:
        entries = (_alternatives(entry, place) for entry in book.joints[keys[number]].needs)
        met = (tuple(way for way in entry if way <= here) for entry in entries)
        needs[number] = tuple(entry for entry in met if entry)
    outer_first = opening_order(needs, (), among)
    in_a_ring = [number for number in among if number not in set(outer_first)]
    return tuple(keys[number] for number in reversed((*outer_first, *in_a_ring)))
