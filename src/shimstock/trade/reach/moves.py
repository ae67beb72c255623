"""Which state a joint or a piece may come into from which, and what stands against a move."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple, TypeVar

from shimstock.trade.machine.state import MachineNow
from shimstock.trade.machine.words import OPEN_WORDS, JointWord, PartWord, stands
from shimstock.trade.reach.closing import why_not_close, why_not_open
from shimstock.trade.reach.goals import reaching_joints
from shimstock.trade.reach.mates import against_set, unlike
from shimstock.trade.reach.new_part import against_new_part
from shimstock.trade.reach.pieces import figures_of, piece_name, pieces_at
from shimstock.trade.reach.readings import undecided
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import UnknownName, joint_of, piece_of

J, P = JointWord, PartWord
Word = TypeVar("Word", JointWord, PartWord)


class Move(NamedTuple):
    """The trade's word for a move into a state, and the states it starts from."""

    word: str
    start: Collection[str]


SHUT = frozenset({J.SEALED, J.TORQUED, J.LEAK_CHECKED, J.WEEPING, J.LEAKING})
"""Joint states that somebody here has brought about by closing, or seen since."""

LEAK_SEEN = frozenset({J.LEAK_CHECKED, J.WEEPING, J.LEAKING})
"""What a leak check brings a joint into."""

JOINT_MOVES: dict[JointWord, Move] = {
    J.UNDISTURBED: Move("leave", {J.TO_BE_OPENED}),
    J.TO_BE_OPENED: Move("plan", {J.UNDISTURBED, *SHUT}),
    J.OPEN: Move("open", {J.UNDISTURBED, J.TO_BE_OPENED, *SHUT, *OPEN_WORDS}),
    J.FACES_CLEAN: Move("clean", OPEN_WORDS),
    J.GASKET_READY: Move("cut gasket", OPEN_WORDS),
    J.DRY_FITTED: Move("dry-fit", OPEN_WORDS),
    J.PARKED_OPEN: Move("cover", OPEN_WORDS),
    J.SEALED: Move("close", OPEN_WORDS),
    J.TORQUED: Move("torque", {J.SEALED, J.LEAK_CHECKED, J.WEEPING, J.LEAKING, *OPEN_WORDS}),
    J.LEAK_CHECKED: Move("pass dry", {J.UNDISTURBED, J.SEALED, J.TORQUED, J.WEEPING}),
    J.WEEPING: Move("run", {J.UNDISTURBED, J.TO_BE_OPENED, *SHUT}),
    J.LEAKING: Move("run", {J.UNDISTURBED, J.TO_BE_OPENED, *SHUT}),
}

ON_MACHINE = frozenset({P.FITTED, P.DRY_FITTED, P.BUILT_IN, P.PAINTED})
ON_BENCH = frozenset({P.OFF, P.BAGGED, P.WASHED, P.MEASURED, P.BACK_AND_CHECKED, P.IN_HAND})
JUDGED = frozenset({P.PASSED, P.PASSED_WITH_NOTE, P.REJECTED})
WANTING = frozenset({P.REJECTED, P.SCRAPPED, P.TO_BE_MADE, P.WANTED, P.QUOTED})
SENT_OUT = frozenset({P.AT_MACHINIST, P.AT_BENCH, P.LENT})
FIT_TO_GO_IN = frozenset({P.PASSED, P.PASSED_WITH_NOTE, P.IN_HAND, P.BACK_AND_CHECKED})

PIECE_MOVES: dict[PartWord, Move] = {
    P.FITTED: Move("leave", {P.MEASURED, P.PASSED, P.PASSED_WITH_NOTE}),
    P.OFF: Move("take off", ON_MACHINE | JUDGED | {P.MEASURED, P.PARKED}),
    P.BAGGED: Move("bag", ON_MACHINE | ON_BENCH | JUDGED | {P.PARKED}),
    P.WASHED: Move("wash", ON_BENCH | JUDGED),
    P.MEASURED: Move("measure", ON_MACHINE | ON_BENCH | JUDGED),
    P.PASSED: Move("pass", ON_MACHINE | ON_BENCH | JUDGED),
    P.PASSED_WITH_NOTE: Move("pass", ON_MACHINE | ON_BENCH | JUDGED),
    P.REJECTED: Move("reject", ON_MACHINE | ON_BENCH | JUDGED | {P.PARKED}),
    P.TO_BE_MADE: Move("make", WANTING | {P.OFF, P.MEASURED}),
    P.WANTED: Move("look for", WANTING | ON_BENCH | {P.FITTED, P.ON_ORDER}),
    P.QUOTED: Move("ask a price", WANTING | {P.OFF, P.MEASURED}),
    P.ON_ORDER: Move("order", WANTING),
    P.IN_THE_POST: Move("send", {P.ON_ORDER}),
    P.IN_HAND: Move("book in", WANTING | {P.ON_ORDER, P.IN_THE_POST}),
    P.AT_MACHINIST: Move("send out", ON_BENCH | JUDGED | {P.PARKED}),
    P.AT_BENCH: Move("send out", ON_BENCH | JUDGED | {P.PARKED}),
    P.BACK_AND_CHECKED: Move("fetch back", SENT_OUT),
    P.DRY_FITTED: Move("try", FIT_TO_GO_IN | ON_BENCH | {P.DRY_FITTED}),
    P.BUILT_IN: Move("build in", FIT_TO_GO_IN | {P.DRY_FITTED}),
    P.PAINTED: Move("paint", {P.FITTED, P.BUILT_IN, P.PASSED, P.PASSED_WITH_NOTE}),
    P.LENT: Move("lend", ON_BENCH | JUDGED | {P.PARKED}),
    P.PARKED: Move("park", ON_BENCH | JUDGED),
    P.SCRAPPED: Move("scrap", {P.REJECTED, P.PARKED, P.OFF}),
}


def may_move_joint(now: MachineNow, joint: str, to: JointWord) -> tuple[Reason, ...]:
    """What stands against a joint coming into a state; nothing where it may.

    Raises UnknownName for a joint the book does not know.
    """
    name = joint_of(now.book, joint).name
    word = now.joint(joint).word
    if reason := _not_in_table(name, word, to, JOINT_MOVES):
        return (reason,)
    if to in LEAK_SEEN and torque_due(now, joint):
        would = "tighten it to the figure and write down the torque first"
        why = "is sealed, and not torqued yet: a leak check would prove nothing"
        return (Reason(name, why, would, hard=True),)
    if to in OPEN_WORDS and word not in OPEN_WORDS:
        return why_not_open(now, joint)
    if to not in OPEN_WORDS and word in OPEN_WORDS:
        return why_not_close(now, joint)
    return ()


def torque_due(now: MachineNow, joint: str) -> bool:
    """True where a joint is closed and not yet written down as torqued, and the book has a torque.

    Raises UnknownName for a joint the book does not know.
    """
    return joint_of(now.book, joint).has_torque and now.joint(joint).word is J.SEALED


def may_move_piece(now: MachineNow, part: str, piece: str, to: PartWord) -> tuple[Reason, ...]:
    """What stands against a piece of a part coming into a state; nothing where it may.

    piece: which of several, "" where there is one. Raises UnknownName for a part or piece the book
    does not know.
    """
    several = len(piece_of(now.book, part, piece).instances) > 1
    if several and not piece:
        those = " or ".join(now.book.parts[part].instances)
        raise UnknownName(f"{part} has several pieces; say which: {those}")
    called = piece_name(now.book, part, piece)
    if reason := _not_in_table(called, now.piece(part, piece).word, to, PIECE_MOVES):
        return (reason,)
    return tuple(_against_piece(now, part, piece, to))


def _not_in_table(name: str, word: Word, to: Word, moves: Mapping[Word, Move]) -> Reason | None:
    if word in moves[to].start:
        return None
    onwards = [f"{move.word} ({end})" for end, move in moves.items() if word in move.start]
    would = f"from here: {', '.join(onwards) or 'nothing'}"
    return Reason(name, f"{stands(word)}, and cannot become {to} from that", would, hard=True)


def _against_piece(now: MachineNow, part: str, piece: str, to: PartWord) -> Iterator[Reason]:
    if to in (P.PASSED, P.PASSED_WITH_NOTE, P.BUILT_IN):
        yield from undecided(now, part, piece)
        yield from against_new_part(now, part, piece)
    if to is P.REJECTED:
        yield from _sealed_over(now, part, piece)
    if to is P.OFF:
        yield from _shut_in(now, part, piece)
    if to is P.ON_ORDER:
        yield from _not_measured(now, part, piece)
    of_set = now.book.parts[part].set
    if of_set and to is P.BUILT_IN:
        yield from against_set(now, of_set)
    elif of_set and to is P.PAINTED:
        yield from unlike(now, of_set)


def _sealed_over(now: MachineNow, part: str, piece: str) -> Iterator[Reason]:
    """A part cannot be rejected while a joint that it is sealed into stays closed."""
    for key, joint in now.book.joints.items():
        meets = part in joint.between and piece in pieces_at(now.book, key, part)
        word = now.joint(key).word
        if meets and word in SHUT:
            yield Reason(joint.name, f"is {word} on it", "open that joint first", hard=True)


def _shut_in(now: MachineNow, part: str, piece: str) -> Iterator[Reason]:
    """A part cannot come off while all joints that lead to it are shut, one of them by us."""
    leading = reaching_joints(now.book, part, piece)
    if any(now.joint(key).is_open for key in leading):
        return
    for key in leading:
        word = now.joint(key).word
        if word in SHUT:
            name = now.book.joints[key].name
            yield Reason(name, f"{stands(word)} over it", "open that joint first", hard=True)


def _not_measured(now: MachineNow, part: str, piece: str) -> Iterator[Reason]:
    """Nothing that comes in sizes is ordered before it is measured."""
    for key in figures_of(now.book, part):
        figure = now.book.measures[key]
        if figure.sizes and now.latest(key, piece) is None:
            would = "measure first; do not order sized parts yet"
            yield Reason(figure.name, "is not measured, and comes in sizes", would, hard=True)
