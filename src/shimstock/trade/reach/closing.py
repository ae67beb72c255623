"""Why a joint may not be opened or closed yet."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from shimstock.trade.machine.book import Book, Joint
from shimstock.trade.machine.state import JointNow, MachineNow
from shimstock.trade.machine.words import MAY_BE_CLOSED_OVER, JointWord, Seals
from shimstock.trade.reach.answers import answered, would_settle
from shimstock.trade.reach.mates import against_set, sets_behind
from shimstock.trade.reach.pieces import parts_behind, piece_name, pieces_at, pieces_behind
from shimstock.trade.reach.readings import against_finished, figure_name, undecided
from shimstock.trade.reach.reason import Reason
from shimstock.trade.reach.target import joint_of

CLEAN_WORDS = frozenset({JointWord.FACES_CLEAN, JointWord.GASKET_READY, JointWord.DRY_FITTED})


def why_not_open(now: MachineNow, joint: str) -> tuple[Reason, ...]:
    """What must be done before a joint can be opened; nothing where it can be opened now.

    Raises UnknownName for a joint the book does not know.
    """
    entry = joint_of(now.book, joint)
    if now.joint(joint).is_open:
        return (Reason(entry.name, "is open already", "nothing to do", hard=True),)
    unmet = [ways for ways in entry.needs if not _met(ways, now.open_joints)]
    return tuple(_must_come_first(now.book, entry, ways, now.open_joints) for ways in unmet)


def _must_come_first(
    book: Book, entry: Joint, ways: tuple[tuple[str, ...], ...], opened: Collection[str]
) -> Reason:
    shut = [[book.joints[key].name for key in way if key not in opened] for way in ways]
    would = " or ".join(" and ".join(names) for names in shut)
    return Reason(entry.name, "cannot be got at yet", f"open {would} first", hard=True)


def _met(ways: tuple[tuple[str, ...], ...], opened: Collection[str]) -> bool:
    return any(all(key in opened for key in way) for way in ways)


def why_not_close(
    now: MachineNow,
    joint: str,
    *,
    bolts: int | None = None,
    gaskets: Collection[str] = (),
    faces_clean: bool = False,
) -> tuple[Reason, ...]:
    """Everything that stands against closing a joint; nothing where it may be closed now.

    bolts: fastenings counted just now. gaskets: what is ready beside those noted. faces_clean: said
    just now. Raises UnknownName for a joint the book does not know.
    """
    entry = joint_of(now.book, joint)
    state = now.joint(joint)
    if not state.is_open:
        would = "open it first" if state.word is not JointWord.UNDISTURBED else "nothing to do"
        return (Reason(entry.name, f"is not open: it is {state.word}", would, hard=True),)
    return (
        *_left_open_behind(now, joint),
        *_pieces(now, joint),
        *_sets(now, joint),
        *_readings(now, joint),
        *_settled(now, joint),
        *_gaskets(entry, {*state.gaskets_ready, *gaskets}),
        *_faces(entry, state, faces_clean),
        *_not_counted(entry, state, bolts),
        *counts_apart(entry, state, bolts),
        *_questions(now, entry),
    )


def _left_open_behind(now: MachineNow, joint: str) -> Iterator[Reason]:
    """Open joints that could not be got at any more once this one is closed."""
    after = now.open_joints - {joint}
    for key in now.book.joints:
        needs = now.book.joints[key].needs if key in after else ()
        if any(_met(ways, now.open_joints) and not _met(ways, after) for ways in needs):
            name = now.book.joints[key].name
            yield Reason(name, "is still open behind it", f"close {name} first", hard=True)


def _pieces(now: MachineNow, joint: str) -> Iterator[Reason]:
    for part, piece in pieces_behind(now.book, joint):
        word = now.piece(part, piece).word
        if word not in MAY_BE_CLOSED_OVER:
            what = piece_name(now.book, part, piece)
            yield Reason(what, f"is {word}", "pass it, or fit one that is passed", hard=True)


def _sets(now: MachineNow, joint: str) -> Iterator[Reason]:
    for name in sets_behind(now, parts_behind(now.book, joint)):
        yield from against_set(now, name)


def _readings(now: MachineNow, joint: str) -> Iterator[Reason]:
    for part, piece in pieces_behind(now.book, joint):
        yield from undecided(now, part, piece)


def _settled(now: MachineNow, joint: str) -> Iterator[Reason]:
    """Figures that this joint sets, by its gasket, shims or adjuster."""
    for settled in now.book.joints[joint].settles:
        part = now.book.measures[settled.figure].of
        for piece in [settled.piece] if settled.piece else pieces_at(now.book, joint, part):
            if reason := against_finished(now, settled.figure, piece, hard=False):
                what = f"{figure_name(now, settled.figure, piece)}, set by the {settled.by}"
                yield Reason(what, reason.why, reason.would_do)


def _gaskets(entry: Joint, ready: Collection[str]) -> Iterator[Reason]:
    for use in entry.uses:
        if use.one_use and use.kind != "fluid" and use.name not in ready:
            size = f", {use.thickness.typed}" if use.thickness else ""
            would = "a new one, cut or bought, laid ready"
            yield Reason(f"{use.name}{size}", "is not ready", would, hard=True)


def _faces(entry: Joint, state: JointNow, said_clean: bool) -> Iterator[Reason]:
    clean = said_clean or state.faces_clean or state.word in CLEAN_WORDS
    if not clean and any(kind is not Seals.NOTHING for kind in entry.seals):
        yield Reason(entry.name, "faces are not clean", "clean both faces and say so")


def _not_counted(entry: Joint, state: JointNow, counted: int | None) -> Iterator[Reason]:
    out, ready = _counts(entry, state, counted)
    if out and ready is None:
        would = f"count the bag: {out} should be in it"
        yield Reason(entry.name, "fastenings are not counted", would, hard=True)


def counts_apart(entry: Joint, state: JointNow, counted: int | None = None) -> Iterator[Reason]:
    """Why a joint may not be closed, of what came off, against the book and the bag.

    counted: fastenings counted just now.
    """
    out, ready = _counts(entry, state, counted)
    if out < entry.bolts:
        would = "look whether one is missing, or say why it has fewer"
        yield Reason(entry.name, f"{out} came off where the book has {entry.bolts}", would)
    if not out or ready is None:
        return
    if ready < out:
        would = "look in the casting and the wash, or put a new one in the bag"
        yield Reason(entry.name, f"{ready} where {out} came off", would, hard=True)
    elif ready > out:
        would = "find out which joint the others belong to"
        yield Reason(entry.name, f"{ready} where {out} came off", would, hard=True)


def _counts(entry: Joint, state: JointNow, counted: int | None) -> tuple[int, int | None]:
    """How many came off, and how many lie ready; None where nobody has counted those."""
    out = state.bolts_out if state.bolts_out is not None else entry.bolts
    return out, counted if counted is not None else state.bolts_ready


def _questions(now: MachineNow, entry: Joint) -> Iterator[Reason]:
    """Questions that must be answered before a joint with such a danger is closed."""
    for gate in now.book.gates.values():
        for key, point in gate.points.items():
            waits = not set(point.before_closing).isdisjoint(entry.dangers)
            if waits and not answered(now, key, point):
                why = f"waits for an answer: {point.ask}"
                yield Reason(entry.name, why, would_settle(point), point.hard)
