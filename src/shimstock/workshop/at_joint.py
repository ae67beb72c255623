"""One joint as somebody stands before it: what it is, what may be done, what lies behind it."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from shimstock.trade.machine.words import JointWord, Seals, Verdict
from shimstock.workshop.ways import Step, step_of

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Joint, Use
    from shimstock.trade.machine.state import JointNow, PieceNow, VerdictNow
    from shimstock.trade.reach.due import CautionDue, MeasureFirst
    from shimstock.trade.reach.reason import Reason
    from shimstock.trade.reach.way import Way
    from shimstock.trade.reach.while_open import WhileOpen
    from shimstock.workshop.looking import Seen

WORST_FIRST = (Verdict.WORN_OUT, Verdict.BORDERLINE, Verdict.SERVICEABLE, Verdict.GOOD)

WHEN_SHUT = {
    JointWord.UNDISTURBED: ("open", "leak"),
    JointWord.TO_BE_OPENED: ("open", "leak"),
    JointWord.SEALED: ("torque", "leak", "open"),
    JointWord.TORQUED: ("leak", "open"),
    JointWord.LEAK_CHECKED: ("open", "leak", "torque"),
    JointWord.WEEPING: ("torque", "leak", "open"),
    JointWord.LEAKING: ("open", "torque", "leak"),
}
"""What one does at a joint whose faces are together, the likeliest first."""


@dataclass(frozen=True)
class Against:
    """A reason against, and the place where it is settled; "" where that is this joint itself."""

    reason: Reason
    place: str


@dataclass(frozen=True)
class ToLayReady:
    """Something that closing takes, and whether it lies there."""

    use: Use
    ready: bool


@dataclass(frozen=True)
class FigureBehind:
    """A figure that is read behind a joint; verdict: None where nobody has read it."""

    key: str
    piece: str
    name: str
    verdict: VerdictNow | None


@dataclass(frozen=True)
class PartBehind:
    """A piece that comes into reach; verdict: the worst of its figures, None where none is read."""

    key: str
    piece: str
    name: str
    stands: PieceNow
    verdict: Verdict | None


@dataclass(frozen=True)
class AtJoint:
    """One joint of a machine as it stands; each answer is worked out when it is asked for."""

    seen: Seen
    key: str

    @cached_property
    def entry(self) -> Joint:
        """The joint in the book."""
        return self.seen.book.joints[self.key]

    @cached_property
    def stands(self) -> JointNow:
        """How it stands."""
        return self.seen.now.joint(self.key)

    @cached_property
    def place(self) -> str:
        """Its place, as the diary names it."""
        from shimstock.workshop.places import joint_place

        return joint_place(self.key)

    @property
    def mark(self) -> str:
        """Its short mark."""
        return self.entry.mark or self.key

    @property
    def days(self) -> int | None:
        """Days since it came to stand so."""
        since = self.stands.since
        return None if since is None else (self.seen.now.today - since).days

    @property
    def seals(self) -> tuple[Seals, ...]:
        """What it keeps in or out."""
        return tuple(kind for kind in self.entry.seals if kind is not Seals.NOTHING)

    @cached_property
    def way(self) -> Way | None:
        """The cheapest way to open it; None where it stands open."""
        from shimstock.trade.reach.target import Target
        from shimstock.trade.reach.way import way_in

        if self.stands.is_open:
            return None
        return way_in(self.seen.now, [Target("joint", self.key)])

    @cached_property
    def first(self) -> tuple[Step, ...]:
        """Joints that must be opened before it, in order."""
        opens = self.way.opens if self.way else ()
        return tuple(step_of(self.seen, key) for key in opens if key != self.key)

    @cached_property
    def open_before(self) -> tuple[str, ...]:
        """Joints that stand open before it, and are closed after it, in the book's order."""
        from shimstock.trade.reach.due import open_before

        return open_before(self.seen.now, self.key)

    @cached_property
    def cautions(self) -> tuple[CautionDue, ...]:
        """What can hurt at this joint, on the way to it and at what stands open before it.

        So they are shown in every state: what hurts when it is taken off hurts when it goes back.
        """
        from shimstock.trade.reach.due import cautions_due

        shut = (each.key for each in self.first)
        return cautions_due(self.seen.book, (*self.open_before, *shut, self.key))

    @cached_property
    def measure_first(self) -> tuple[MeasureFirst, ...]:
        """Old packs to measure before they are lost, here and on the way."""
        return self.way.measure_first if self.way else ()

    @cached_property
    def against_opening(self) -> tuple[Against, ...]:
        """Why it cannot be opened yet; nothing where it stands open."""
        from shimstock.workshop.rules import why_not_open

        if self.stands.is_open:
            return ()
        return self._settled(why_not_open(self.seen.now, self.key))

    @cached_property
    def opening_to_undo(self) -> int | None:
        """The entry to undo where the count of what came off is wrong; None where counts agree."""
        from shimstock.workshop.miscounted import opening_to_undo

        return opening_to_undo(self.seen.row, self.seen.now, self.key)

    @cached_property
    def against_closing(self) -> tuple[Against, ...]:
        """Why it may not be closed yet; nothing where it is shut."""
        from shimstock.workshop.miscounted import with_way_back
        from shimstock.workshop.rules import why_not_close

        if not self.stands.is_open:
            return ()
        now, entry = self.seen.now, self.opening_to_undo
        return self._settled(with_way_back(now, self.key, why_not_close(now, self.key), entry))

    @property
    def said_against(self) -> tuple[str, ...]:
        """The reasons against closing, as an act that is refused says them."""
        return tuple(str(each.reason) for each in self.against_closing)

    @property
    def only_soft(self) -> bool:
        """True where something stands against closing that a reason may set aside."""
        against = self.against_closing
        return bool(against) and not any(each.reason.hard for each in against)

    def shown_now(self, taken: Collection[str]) -> str:
        """What a photo taken now most likely shows: before or after the work; "" for neither.

        taken: the moments of the photos there are of it.
        """
        untouched = self.stands.word in (JointWord.UNDISTURBED, JointWord.TO_BE_OPENED)
        if untouched or (self.stands.is_open and "before" not in taken):
            return "before"
        return "" if self.stands.is_open else "after"

    @cached_property
    def to_lay_ready(self) -> tuple[ToLayReady, ...]:
        """Gaskets, seals and small things that closing takes."""
        ready = self.stands.gaskets_ready
        return tuple(ToLayReady(use, use.name in ready) for use in self.entry.uses)

    @property
    def bolts_out(self) -> int:
        """How many fastenings came off, else how many the book has."""
        out = self.stands.bolts_out
        return self.entry.bolts if out is None else out

    @property
    def torque_due(self) -> bool:
        """True where it is closed and is to be torqued before anything else."""
        from shimstock.trade.reach.moves import torque_due

        return torque_due(self.seen.now, self.key)

    @cached_property
    def actions(self) -> tuple[str, ...]:
        """What may be done now: open, cover, ready, close, torque, leak; the likeliest first."""
        if not self.stands.is_open:
            return WHEN_SHUT[self.stands.word]
        if not self.against_closing:
            return ("close", "ready") if self.stands.covered else ("close", "ready", "cover")
        return ("ready", "close") if self.stands.covered else ("cover", "ready", "close")

    @property
    def leak_results(self) -> tuple[str, ...]:
        """What a leak check may find as the joint stands; nothing before its torque."""
        from shimstock.trade.reach.moves import JOINT_MOVES
        from shimstock.workshop.acts.leaks import RESULTS

        if self.torque_due:
            return ()
        word = self.stands.word
        return tuple(said for said, to in RESULTS.items() if word in {to, *JOINT_MOVES[to].start})

    @property
    def may_be_chalked(self) -> bool:
        """True where chalk may prove it dry."""
        return self.stands.word is JointWord.UNDISTURBED

    @property
    def may_be_seen_standing(self) -> bool:
        """True where it can be looked at standing full, and counts as chalk-dry."""
        from shimstock.trade.reach.dry import CLOSED_HERE

        return self.stands.word in CLOSED_HERE and not self.torque_due

    @cached_property
    def while_open(self) -> tuple[WhileOpen, ...]:
        """What else is worth thinking of while it is open, the clearest case first."""
        from shimstock.trade.reach.while_open import while_it_is_open

        opens = self.way.opens if self.way else (self.key,)
        return while_it_is_open(self.seen.now, opens)

    @cached_property
    def parts(self) -> tuple[PartBehind, ...]:
        """Pieces that meet here or come into reach."""
        from shimstock.trade.reach.pieces import piece_name, pieces_behind

        now = self.seen.now
        return tuple(
            PartBehind(
                part,
                piece,
                piece_name(now.book, part, piece),
                now.piece(part, piece),
                _worst(self.seen, part, piece),
            )
            for part, piece in pieces_behind(now.book, self.key)
        )

    @cached_property
    def figures(self) -> tuple[FigureBehind, ...]:
        """Figures to be read on these pieces."""
        return tuple(
            each for part in self.parts for each in _figures(self.seen, part.key, part.piece)
        )

    def _settled(self, reasons: tuple[Reason, ...]) -> tuple[Against, ...]:
        from shimstock.workshop.settling import settled_at

        found = ((reason, settled_at(self.seen.now, reason)) for reason in reasons)
        return tuple(Against(why, "" if at == self.place else at) for why, at in found)


def at_joint(seen: Seen, joint: str) -> AtJoint:
    """One joint of a machine; what was worked out of it is remembered with the machine.

    joint: its key, mark or name. Raises NotFound.
    """
    from shimstock.workshop.find import find_joint

    key = find_joint(seen.book, joint)
    remembered: dict[str, AtJoint] = vars(seen).setdefault("at_joints", {})
    return remembered.setdefault(key, AtJoint(seen, key))


def _figures(seen: Seen, part: str, piece: str) -> Iterator[FigureBehind]:
    from shimstock.trade.reach.pieces import figures_of
    from shimstock.trade.reach.readings import figure_name

    for key in figures_of(seen.book, part):
        name = figure_name(seen.now, key, piece)
        yield FigureBehind(key, piece, name, seen.now.latest(key, piece))


def _worst(seen: Seen, part: str, piece: str) -> Verdict | None:
    read = (each.verdict for each in _figures(seen, part, piece) if each.verdict)
    said = {each.verdict for each in read if not each.too_much_in_all}  # that calls no part worn
    return next((verdict for verdict in WORST_FIRST if verdict in said), None)
