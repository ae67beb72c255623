"""One real machine in the shed at one moment, as plain values that the rules can be asked about."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property

from shimstock.trade.machine.book import Book
from shimstock.trade.machine.words import (
    OPEN_WORDS,
    TOLD_APART,
    TOO_MUCH,
    JointWord,
    PartWord,
    Stage,
    Verdict,
)

PieceKey = tuple[str, str]
"""A part's name in the book and which piece of it ("" where there is only one)."""


@dataclass(frozen=True)
class JointNow:
    """A joint as it stands."""

    word: JointWord = JointWord.UNDISTURBED
    since: date | None = None
    covered: bool = False
    uncovered_on: date | None = None
    bolts_out: int | None = None
    bolts_ready: int | None = None
    faces_clean: bool = False
    gaskets_ready: tuple[str, ...] = ()
    thickness_found: str | None = None
    sealed_on: date | None = None
    leak_checked_on: date | None = None
    dry_chalked_on: date | None = None

    @property
    def is_open(self) -> bool:
        """True while the faces are apart or only laid together."""
        return self.word in OPEN_WORDS


@dataclass(frozen=True)
class PieceNow:
    """One piece of a part as it stands."""

    word: PartWord = PartWord.FITTED
    maker: str = ""
    size: str = ""
    proved_pair: bool = False
    note: str = ""


@dataclass(frozen=True)
class VerdictNow:
    """The latest verdict on one figure of one piece at one stage."""

    verdict: Verdict
    says: str = ""
    accepted: str = ""

    @property
    def too_much_in_all(self) -> bool:
        """Whether it is the play of a whole chain, proven over its limit."""
        return self.verdict is Verdict.BORDERLINE and TOO_MUCH in self.says

    @property
    def word(self) -> str:
        """The verdict in a word."""
        return TOO_MUCH if self.too_much_in_all else self.verdict.value

    @property
    def told_apart(self) -> bool:
        """Whether it is such a play, of which every link is known by itself."""
        return self.too_much_in_all and TOLD_APART in self.says


@dataclass(frozen=True)
class Answer:
    """What a person answered to a gate's question."""

    answer: str
    by: str
    on: date
    reason: str = ""


@dataclass(frozen=True)
class SearchNow:
    """A search for a fault that goes on, or has left something standing.

    about: in a person's words. found: causes that are there and not put right, by key. seen: signs
    that were seen and are not explained by what was put right since. cleared: causes that are not
    there, or are put right.
    """

    number: int
    about: str
    on: date
    goes_on: bool = True
    found: tuple[str, ...] = ()
    seen: tuple[str, ...] = ()
    cleared: tuple[str, ...] = ()


FigureKey = tuple[str, str, Stage]
"""A figure's name, which piece, and whether as found or as finished."""

UNTOUCHED = JointNow()
AS_MADE = PieceNow()


@dataclass(frozen=True)
class MachineNow:
    """A machine made to a book: what is open, off, read, answered and sought today."""

    book: Book
    today: date
    joints: Mapping[str, JointNow] = field(default_factory=dict)
    pieces: Mapping[PieceKey, PieceNow] = field(default_factory=dict)
    verdicts: Mapping[FigureKey, VerdictNow] = field(default_factory=dict)
    answers: Mapping[str, Answer] = field(default_factory=dict)
    passed: frozenset[str] = frozenset()
    searches: tuple[SearchNow, ...] = ()

    def joint(self, key: str) -> JointNow:
        """A joint's present state; undisturbed where nobody has touched it."""
        return self.joints.get(key, UNTOUCHED)

    def piece(self, part: str, instance: str = "") -> PieceNow:
        """A piece's present state; fitted where nobody has touched it."""
        return self.pieces.get((part, instance), AS_MADE)

    def pieces_of(self, part: str) -> dict[str, PieceNow]:
        """Every piece of a part with its state."""
        return {name: self.piece(part, name) for name in self.book.parts[part].instances}

    @cached_property
    def open_joints(self) -> frozenset[str]:
        """Joints that stand open now."""
        return frozenset(key for key, now in self.joints.items() if now.is_open)

    @cached_property
    def solved(self) -> dict[tuple[str, ...], tuple[str, ...]]:
        """Joints to be opened, by what was asked: kept, since to find the way takes long."""
        return {}

    def latest(self, figure: str, instance: str) -> VerdictNow | None:
        """The verdict that counts now: as finished if there is one, else as found."""
        for stage in (Stage.FINISHED, Stage.FOUND):
            if (found := self.verdicts.get((figure, instance, stage))) is not None:
                return found
        return None
