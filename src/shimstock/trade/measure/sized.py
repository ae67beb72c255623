"""A figure with sizes on offer, and all that is known of its pieces and their mates."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.state import AS_MADE, PieceKey, PieceNow
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.named import piece_name
from shimstock.trade.measure.verdicts import Verdicts

VERBS = frozenset({"bore", "grind", "turn", "hone", "ream", "face"})
"""How a book begins when it says what to do: the first word is the verb."""

WITHIN = ("is within its limits", "are within their limits")
BORDERLINE = ("is borderline", "are borderline")
UNREAD = ("is not measured", "are not measured")
STANDING = (WITHIN, BORDERLINE, UNREAD)
"""How a piece stands that is not proven beyond a limit: said of one, and of several."""


@dataclass(frozen=True)
class Sized:
    """One sized figure of a machine, such as its liner bores, with the verdicts so far."""

    book: Book
    key: str
    verdicts: Verdicts
    pieces: Mapping[PieceKey, PieceNow]

    @cached_property
    def figure(self) -> Figure:
        """The figure itself."""
        return self.book.measures[self.key]

    @cached_property
    def instances(self) -> tuple[str, ...]:
        """The pieces that have this figure."""
        return self.book.parts[self.figure.of].instances

    @cached_property
    def family(self) -> tuple[str, ...]:
        """The figure and those that machining it cures.

        Its taper and out-of-round, and any other figure of the part for which the book begins
        with the same verb, such as a drum's out-of-round read with a dial: "turn both alike".
        """
        cured = (name for name, each in self.book.measures.items() if self._cures(each))
        return (self.key, *cured)

    def _cures(self, each: Figure) -> bool:
        if each.derive:
            return self.key in (each.derive.taper_of, each.derive.out_of_round_of)
        alike = verb(each) in VERBS & {verb(self.figure)}
        return each.of == self.figure.of and not each.sizes and alike

    @property
    def outward(self) -> bool:
        """True where it is machined larger: a bore, not a journal."""
        return self.figure.sizes[0].value > 0

    @cached_property
    def stage(self) -> Stage:
        """As found, until every piece has been read as finished: so the size stays as decided."""
        return Stage.FOUND if self.to_do else Stage.FINISHED

    @cached_property
    def to_do(self) -> tuple[str, ...]:
        """Pieces that have not been read as finished yet."""
        read = self.verdicts.measured
        return tuple(p for p in self.instances if (self.key, p, Stage.FINISHED) not in read)

    @cached_property
    def failing(self) -> dict[tuple[str, str], str]:
        """Figures of the family and pieces that are proven beyond their limit, and what is said."""
        keys = ((name, piece) for name in self.family for piece in self.instances)
        judged = {key: self.verdicts.judged.get((*key, self.stage)) for key in keys}
        return {key: each.says for key, each in judged.items() if each and each.beyond}

    def standing(self, piece: str) -> str:
        """How a piece stands that has not failed, in the words of STANDING for one."""
        if piece in self.unread:
            return UNREAD[0]
        judged = (self.verdicts.judged.get((name, piece, self.stage)) for name in self.family)
        doubtful = any(each and each.verdict is Verdict.BORDERLINE for each in judged)
        return BORDERLINE[0] if doubtful else WITHIN[0]

    @cached_property
    def values(self) -> dict[str, float]:
        """The worst reading of each piece, in the figure's unit."""
        read = self.verdicts.measured
        keys = ((piece, (self.key, piece, self.stage)) for piece in self.instances)
        return {piece: read[key].value for piece, key in keys if key in read}

    @property
    def worst(self) -> float:
        """The worst reading of all; ValueError where none was read."""
        return max(self.values.values()) if self.outward else min(self.values.values())

    @cached_property
    def unread(self) -> tuple[str, ...]:
        """Pieces with no reading at all."""
        return tuple(
            p for p in self.instances if self.verdicts.latest_measured(self.key, p) is None
        )

    @cached_property
    def mates(self) -> dict[str, tuple[str, str]]:
        """Clearance figures it takes part in, each with its mate's figure and part.

        {"piston-clearance": ("piston-skirt", "piston")}
        """
        found = {}
        for name, each in self.book.measures.items():
            if each.derive and self.key in (each.derive.hole, each.derive.shaft):
                hole = self.key == each.derive.hole
                other = each.derive.shaft if hole else each.derive.hole
                if other:
                    found[name] = (other, self.book.measures[other].of)
        return found

    def name(self, piece: str) -> str:
        """A piece as a person calls it."""
        return piece_name(self.book, self.figure.of, piece)

    def now(self, part: str, piece: str) -> PieceNow:
        """The present state of any piece of the machine."""
        return self.pieces.get((part, piece), AS_MADE)


def verb(figure: Figure) -> str:
    """What the book says to do, as one verb; "machine" where it begins with none.

    "bore to the next oversize, or a new liner" begins with bore.
    """
    first = (figure.if_outside or "").split(" ", 1)[0].strip(",;.").lower()
    return first if first in VERBS else "machine"
