"""One part as somebody holds it: where it sits, how its pieces stand, what may become of them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from shimstock.trade.machine.sides import sits_on
from shimstock.trade.machine.words import PartWord
from shimstock.workshop import rules
from shimstock.workshop.find import find_part
from shimstock.workshop.wording import joint_named

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Caution, Joint, Part
    from shimstock.trade.machine.state import PieceNow, VerdictNow
    from shimstock.workshop.looking import Seen


@dataclass(frozen=True)
class FigureOfPart:
    """A figure of one piece; verdict: None where nobody has read it."""

    key: str
    name: str
    verdict: VerdictNow | None


@dataclass(frozen=True)
class AtPiece:
    """One piece of a part; it may become `allowed` now, and `others` once rules let it.

    sits_on: key and name of the part it sits on, on its own side of the machine.
    """

    name: str
    stands: PieceNow
    allowed: tuple[PartWord, ...]
    others: tuple[PartWord, ...]
    figures: tuple[FigureOfPart, ...]
    sits_on: tuple[str, str] | None


@dataclass(frozen=True)
class AtPart:
    """One part of a machine as it stands; each answer is worked out when it is asked for."""

    seen: Seen
    key: str

    @property
    def entry(self) -> Part:
        """The part in the book."""
        return self.seen.book.parts[self.key]

    @cached_property
    def pieces(self) -> tuple[AtPiece, ...]:
        """Each of its pieces."""
        return tuple(
            self._piece(name, stands) for name, stands in self.seen.now.pieces_of(self.key).items()
        )

    @property
    def carries(self) -> tuple[tuple[str, str], ...]:
        """Keys and names of the parts that sit on it."""
        parts = self.seen.book.parts.items()
        return tuple(
            (key, part.name)
            for key, part in parts
            if any(sits_on(self.seen.book, key, piece) == self.key for piece in part.instances)
        )

    @property
    def mates(self) -> tuple[tuple[str, str], ...]:
        """Keys and names of the other parts of its set."""
        if not self.entry.set:
            return ()
        parts, members = self.seen.book.parts, self.seen.book.members(self.entry.set)
        return tuple((key, parts[key].name) for key in members if key != self.key)

    @property
    def signs(self) -> tuple[tuple[str, str, str], ...]:
        """The signs of a fault that show on it: key, mark and name."""
        signs = self.seen.book.signs.items()
        return tuple((k, sign.mark or "", sign.name) for k, sign in signs if sign.where == self.key)

    @cached_property
    def joints(self) -> tuple[tuple[str, str, object], ...]:
        """Joints that meet it or bring it into reach: key, name and state."""
        joints = self.seen.book.joints.items()
        return tuple(
            (key, joint_named(self.seen.book, key), self.seen.now.joint(key).word)
            for key, joint in joints
            if self.key in (*joint.between, *joint.reaches)
        )

    @cached_property
    def cautions(self) -> tuple[Caution, ...]:
        """What can hurt at the joints that meet it, each once."""
        met = [joint for joint in self.seen.book.joints.values() if self.key in joint.between]
        found = {c.name: c for joint in met for c in self._cautions(joint)}
        return tuple(found.values())

    def _cautions(self, joint: Joint) -> tuple[Caution, ...]:
        return tuple(self.seen.book.cautions_for(joint))

    def _piece(self, name: str, stands: PieceNow) -> AtPiece:
        words = [word for word in PartWord if word != stands.word]
        allowed = tuple(
            word
            for word in words
            if not rules.why_not_move_piece(self.seen.now, self.key, name, word)
        )
        others = tuple(word for word in words if word not in allowed)
        return AtPiece(name, stands, allowed, others, self._figures(name), self._below(name))

    def _below(self, piece: str) -> tuple[str, str] | None:
        """What a piece sits on: of two like parts that are named so, the one on its own side."""
        below = sits_on(self.seen.book, self.key, piece)
        return (below, self.seen.book.parts[below].name) if below else None

    def _figures(self, piece: str) -> tuple[FigureOfPart, ...]:
        measures = self.seen.book.measures.items()
        return tuple(
            FigureOfPart(key, figure.name, self.seen.now.latest(key, piece))
            for key, figure in measures
            if figure.of == self.key
        )


def at_part(seen: Seen, typed: str) -> AtPart:
    """Stand before a part, by key, mark or name. Raises NotFound."""
    return AtPart(seen, find_part(seen.book, typed))
