"""The checks of a book at a machine as it stands: what must be opened for each, what can hurt."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from shimstock.trade.faults.network import Check
    from shimstock.trade.machine.book import Book, Caution
    from shimstock.trade.reach.target import Target
    from shimstock.workshop.looking import Seen


NAMED = 3
"""How many open joints a reason names."""


@dataclass(frozen=True)
class Checks:
    """What could be checked.

    can: by key, each with the joints still to be opened for it, in the order of `way`, and with the
    dangers and hands of those joints. blocked: checks to which no way leads, and why.
    """

    can: dict[str, Check]
    way: dict[str, tuple[str, ...]]
    blocked: dict[str, str]


def checks_at(seen: Seen, causes: Iterable[str]) -> Checks:
    """The checks that could settle or tell something of some causes, as the machine stands.

    Opening up for a part is among them where there is something to open; where it lies open, the
    book's own check is what is left to do.
    """
    from shimstock.trade.reach.blocked import NoWay

    can: dict[str, Check] = {}
    ways: dict[str, tuple[str, ...]] = {}
    blocked: dict[str, str] = {}
    apart = engine_apart(seen)
    for key, check, targets in _of_book(seen.book, frozenset(causes)):
        if check.engine and (stands_open := [each for each in apart if each not in check.joints]):
            blocked[key] = f"the engine must turn or run, and {_open_at(seen.book, stands_open)}"
            continue
        try:
            opens = _opens(seen, targets)
        except NoWay as error:
            blocked[key] = str(error)
            continue
        if opens or not key.startswith("open:"):
            can[key], ways[key] = _with_joints(seen.book, check, opens), opens
    return Checks(can, ways, blocked)


def engine_apart(seen: Seen) -> tuple[str, ...]:
    """The open joints that keep the engine from turning or running."""
    open_now = seen.now.open_joints
    return tuple(key for key, joint in seen.book.joints.items() if joint.to_run and key in open_now)


def _open_at(book: Book, joints: list[str]) -> str:
    names = [called(book.joints, each) for each in joints[:NAMED]]
    more = len(joints) - len(names)
    return f"is open at {', '.join(names)}" + (f" and {more} more" if more else "")


def cautions_of(book: Book, check: Check) -> tuple[Caution, ...]:
    """The cautions that a check calls up, those of the joints to be opened for it included."""
    dangers = set(check.dangers)
    return tuple(each for each in book.cautions.values() if dangers & set(each.dangers))


def _of_book(book: Book, causes: frozenset[str]) -> Iterator[tuple[str, Check, tuple[Target, ...]]]:
    from shimstock.trade.faults.of_book import checks_of, openings_of
    from shimstock.trade.reach.target import Target

    for key, check in checks_of(book).items():
        tells = {cause for sign in check.gives for cause in book.signs[sign].causes}
        if causes & {*check.confirms, *tells}:
            yield key, check, tuple(Target("joint", each) for each in sorted(check.joints))
    for key, check in openings_of(book).items():
        if causes & {*check.confirms}:
            yield key, check, (Target("part", key.partition(":")[2]),)


def _opens(seen: Seen, targets: tuple[Target, ...]) -> tuple[str, ...]:
    from shimstock.trade.reach.way import way_in

    return way_in(seen.now, targets).opens if targets else ()


def _with_joints(book: Book, check: Check, opens: tuple[str, ...]) -> Check:
    from shimstock.trade.reach.due import heavy_steps

    joints = [book.joints[key] for key in opens]
    hands = [each.hands for each in joints] + [each.hands for each in heavy_steps(book, opens)]
    dangers = [danger for joint in joints for danger in joint.dangers]
    return replace(
        check,
        joints=frozenset(opens),
        hands=max([check.hands, *hands]),
        dangers=tuple(dict.fromkeys([*check.dangers, *dangers])),
    )
