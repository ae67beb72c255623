"""The checks of a book at a machine as it stands: what must be opened for each, what can hurt."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from shimstock.trade.faults.forbidden import Forbidden
    from shimstock.trade.faults.network import Check
    from shimstock.trade.machine.book import Book, Caution
    from shimstock.trade.machine.words import PartWord
    from shimstock.trade.reach.target import Target
    from shimstock.workshop.looking import Seen


NAMED = 3
"""How many open joints a reason names."""


@dataclass(frozen=True)
class Checks:
    """What could be checked.

    can: by key, each with the joints still to be opened for it, in the order of `way`, and with the
    dangers and hands of those joints. blocked: checks to which no way leads, and why. standing:
    those of `can` that are done in the form for an engine that stands.
    """

    can: dict[str, Check]
    way: dict[str, tuple[str, ...]]
    blocked: dict[str, str]
    standing: frozenset[str] = frozenset()


def checks_at(seen: Seen, causes: Iterable[str], by: tuple[Forbidden, ...] = ()) -> Checks:
    """The checks that could settle or tell something of some causes, as the machine stands.

    by: what forbids that the engine runs or turns. A check that is held back for want of a running
    engine is offered in its form for an engine that stands, where it has one.
    Opening up for a part is among them where there is something to open; where it lies open, the
    book's own check is what is left to do. What is not in the shed cannot be checked; what is off
    can be on the bench, unless the machine must run, or joints be closed, for it.
    """
    from shimstock.trade.faults.of_book import standing_of
    from shimstock.trade.reach.blocked import NoWay
    from shimstock.trade.reach.whereabouts import engine_apart

    can: dict[str, Check] = {}
    ways: dict[str, tuple[str, ...]] = {}
    blocked: dict[str, str] = {}
    standing: set[str] = set()
    apart = engine_apart(seen.now)
    for key, check, targets in _of_book(seen.book, frozenset(causes)):
        if reason := _held_back(seen, key, check, apart, by):
            instead = standing_of(seen.book, key, check)
            if instead is None or _Looked(_looked(seen.book, key).part).away(seen):
                blocked[key] = reason
                continue
            check = instead
            standing.add(key)
        try:
            opens = _opens(seen, targets)
        except NoWay as error:
            blocked[key] = str(error)
            continue
        if opens or not key.startswith("open:"):
            can[key], ways[key] = _with_joints(seen.book, check, opens), opens
    return Checks(can, ways, blocked, frozenset(standing))


def cannot_show(seen: Seen, sign: str, by: tuple[Forbidden, ...] = ()) -> bool:
    """Whether a sign cannot be looked for as the machine stands: its part is away, or it is apart.

    sign: its key. by: what forbids that the engine runs or turns, for which it may be looked for.
    """
    from shimstock.trade.faults.forbidden import held_by
    from shimstock.trade.reach.whereabouts import engine_apart

    looked = _looked(seen.book, f"sign:{sign}")
    turns = seen.book.signs[sign].when is not None
    if held_by(seen.book, f"sign:{sign}", by):
        return True
    return bool((turns and engine_apart(seen.now)) or looked.away(seen) or looked.apart(seen))


@dataclass(frozen=True)
class _Looked:
    """What is looked at: the part it sits on, joints to be closed, whether it must be fitted."""

    part: str | None
    closed: tuple[str, ...] = ()
    whole: bool = False

    def away(self, seen: Seen) -> str:
        """That its part is not in the shed, and where it is; "" where it can be looked at.

        One piece that is there can be looked at by itself, but nothing is run without the other.
        """
        from shimstock.trade.reach.whereabouts import NOT_HERE

        words = self._words(seen)
        gone = [word for word in words if word in NOT_HERE]
        if not gone or (len(gone) < len(words) and not self.whole):
            return ""
        return f"{self._name(seen)} is {' or '.join(dict.fromkeys(gone))}"

    def apart(self, seen: Seen) -> str:
        """That its part is off, or joints open that must be closed for it; "" where neither is."""
        from shimstock.trade.reach.whereabouts import is_off

        part = self.part
        pieces = seen.book.parts[part].instances if part and self.whole else ()
        if part and any(is_off(seen.now, part, piece) for piece in pieces):
            return f"{self._name(seen)} is off the machine"
        stands_open = [each for each in self.closed if each in seen.now.open_joints]
        return f"it {_open_at(seen.book, stands_open)}" if stands_open else ""

    def _words(self, seen: Seen) -> list[PartWord]:
        return [each.word for each in seen.now.pieces_of(self.part).values()] if self.part else []

    def _name(self, seen: Seen) -> str:
        return called(seen.book.parts, self.part) if self.part else ""


def _looked(book: Book, key: str) -> _Looked:
    kind, _, name = key.partition(":")
    if kind == "cause":
        cause, check = book.causes[name], book.causes[name].check
        return _Looked(cause.part, check.closed, whole=bool(check.when or check.closed))
    if kind == "sign":
        sign = book.signs[name]
        return _Looked(sign.where, sign.closed, whole=bool(sign.when or sign.closed))
    return _Looked(name)


def forbidden_told(book: Book, by: Forbidden) -> str:
    """That the engine must not run, or turn: while what is so, and what it would do."""
    kind, _, key = by.about.partition(":")
    sign = kind == "sign"
    while_ = f"{called(book.signs if sign else book.causes, key)} is {'seen' if sign else 'there'}"
    while_ += f" (search {by.search})" if by.search else ""
    waits = [called(book.causes, cause) for cause in by.says.until]
    until = f", until {' and '.join(waits)} is cleared" if waits else ""
    how = "turn or run" if by.says.engine == "turning" else "run"
    return f"the engine must not {how} while {while_}{until}; {by.says.why}"


def _held_back(
    seen: Seen, key: str, check: Check, apart: tuple[str, ...], by: tuple[Forbidden, ...]
) -> str:
    """Why a check cannot be done as the machine stands; "" where nothing speaks against it."""
    from shimstock.trade.faults.forbidden import held_by

    looked = _looked(seen.book, key)
    if away := looked.away(seen):
        return away
    if held := held_by(seen.book, key, by):
        return forbidden_told(seen.book, held)
    if check.engine and (stands_open := [each for each in apart if each not in check.joints]):
        return f"the engine must turn or run, and {_open_at(seen.book, stands_open)}"
    return looked.apart(seen)


def _open_at(book: Book, joints: list[str]) -> str:
    names = [called(book.joints, each) for each in joints[:NAMED]]
    more = len(joints) - len(names)
    return f"is open at {', '.join(names)}" + (f" and {more} more" if more else "")


def cautions_of(book: Book, check: Check) -> tuple[Caution, ...]:
    """The cautions that a check calls up, those of the joints to be opened for it included."""
    return cautions_by(book, check.dangers)


def cautions_by(book: Book, dangers: Iterable[str]) -> tuple[Caution, ...]:
    """The cautions that danger words call up, in the order of the book."""
    words = set(dangers)
    return tuple(each for each in book.cautions.values() if words & set(each.dangers))


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
