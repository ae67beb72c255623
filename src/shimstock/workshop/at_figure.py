"""One figure as somebody stands before it with the gauge: how it is read, what was read, what then.

One piece of it at one stage is being read; what was read of the others stands beside it.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from shimstock.trade.machine.state import VerdictNow
from shimstock.trade.machine.words import Stage, Verdict
from shimstock.trade.measure.pair import TOGETHER
from shimstock.trade.measure.reading import Reading
from shimstock.trade.numbers.unit_names import OTHER_SYSTEM
from shimstock.trade.reach.pieces import pieces_behind
from shimstock.workshop import verdicts_told as told
from shimstock.workshop.find import find_figure, find_piece
from shimstock.workshop.judging import trade_reading
from shimstock.workshop.models import ReadingRow, VerdictRow
from shimstock.workshop.reading_typed import instruments_for, value_read
from shimstock.workshop.wording import figure_named, one_word

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Figure
    from shimstock.trade.measure.remedy import Remedy
    from shimstock.workshop.looking import Seen

REPEATS = 5
"""Boxes for a figure that is read as often as one likes, and averaged."""


@dataclass(frozen=True)
class Told:
    """A verdict in words, with how it was reached."""

    row: VerdictRow
    word: str
    chance: str

    @cached_property
    def working(self) -> list[str]:
        """How it was reached, line by line."""
        return told.working_lines(self.row)

    @property
    def settles(self) -> str:
        """What would settle it."""
        return str(self.row.data.get("settles") or "")

    @property
    def book_says(self) -> str:
        """What the book says to do."""
        return str(self.row.data.get("remedy") or "")

    @property
    def may_be_accepted(self) -> bool:
        """Whether a person may have to accept it with a reason."""
        beyond = self.row.verdict in (Verdict.WORN_OUT, Verdict.BORDERLINE)
        return beyond and not self.row.accepted_reason


@dataclass(frozen=True)
class Which:
    """A piece that may be chosen, or a stage, with the verdict on it."""

    name: str
    verdict: VerdictNow | None


@dataclass(frozen=True)
class Earlier:
    """A reading that was taken; values: as understood, place by place."""

    row: ReadingRow
    values: tuple[str, ...]


@dataclass(frozen=True)
class AtFigure:
    """One figure of a machine, one piece of it and one stage."""

    seen: Seen
    key: str
    piece: str
    stage: Stage
    rows: list[VerdictRow] = field(repr=False)
    readings: list[ReadingRow] = field(repr=False)

    @cached_property
    def entry(self) -> Figure:
        """The figure in the book."""
        return self.seen.book.measures[self.key]

    @property
    def name(self) -> str:
        """Its name, of which piece, with its mark."""
        return figure_named(self.seen.book, self.key, self.piece)

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces of its part; one without a name where there is only one."""
        return tuple(self.seen.book.parts[self.entry.of].instances)

    @cached_property
    def which(self) -> tuple[Which, ...]:
        """The pieces to choose from, each with its verdict; none where there is only one."""
        if len(self.pieces) < 2:
            return ()
        latest = self.seen.now.latest
        return tuple(Which(piece, latest(self.key, piece)) for piece in self.pieces)

    @cached_property
    def stages(self) -> tuple[Which, ...]:
        """As found and as finished, each with the verdict on this piece."""
        known = self.seen.now.verdicts
        return tuple(Which(each, known.get((self.key, self.piece, each))) for each in Stage)

    @property
    def boxes(self) -> tuple[str, ...]:
        """The name of each place that is read; one without a name for a single number."""
        if self.entry.at:
            return self.entry.at.labels
        return ("",) * (REPEATS if self.entry.judge == "mean" else 1)

    @property
    def repeats(self) -> bool:
        """Whether it may be read as often as one likes."""
        return self.entry.at is None and self.entry.judge == "mean"

    @property
    def units(self) -> tuple[str, ...]:
        """The unit of a bare number, and that of the other system."""
        unit = self.entry.measured_in
        return tuple(dict.fromkeys(each for each in (unit, OTHER_SYSTEM.get(unit, "")) if each))

    @property
    def instruments(self) -> tuple[str, ...]:
        """Names of what it can be read with."""
        return instruments_for(self.entry)

    @property
    def allowed(self) -> str:
        """What the book allows."""
        return told.limit_told(self.seen.book, self.key, self.piece)

    @property
    def can_only_follow(self) -> bool:
        """Whether it is worked out from other readings, as taper is, and seldom read itself."""
        derive = self.entry.derive
        return derive is not None and not derive.hole

    @cached_property
    def follows_from(self) -> tuple[str, ...]:
        """The figures that it is worked out from."""
        return self.entry.derive.sources if self.entry.derive else ()

    @cached_property
    def verdicts(self) -> dict[str, Told]:
        """The verdicts on this piece that count, by stage."""
        return {row.stage: self._told(row) for row in self.rows if row.piece == self.piece}

    @cached_property
    def together(self) -> Told | None:
        """How far all pieces, or all places, differ: the verdict that counts now."""
        rows = {row.stage: row for row in self.rows if row.piece == TOGETHER}
        row = rows.get(Stage.FINISHED) or rows.get(Stage.FOUND)
        return self._told(row) if row else None

    @cached_property
    def remedies(self) -> tuple[Remedy, ...]:
        """What to do that touches this piece of the figure."""
        found = self.seen.measured[1]
        own = (self.entry.of, self.piece)
        return tuple(
            each for each in found if self.key in each.figures and self._touches(each, own)
        )

    @cached_property
    def joints(self) -> tuple[str, ...]:
        """The joints behind which it lies."""
        book, wanted = self.seen.book, (self.entry.of, self.piece)
        return tuple(key for key in book.joints if wanted in pieces_behind(book, key))

    @cached_property
    def traces(self) -> dict[str, Reading]:
        """What was read of this piece and counts, by stage."""
        return {
            row.stage: trade_reading(self.seen.book, row)
            for row in self.readings
            if row.piece == self.piece and not (row.superseded or row.withdrawn)
        }

    @cached_property
    def earlier(self) -> tuple[Earlier, ...]:
        """Every reading of this piece, the latest first; those that no longer count as well."""
        own = (row for row in self.readings if row.piece == self.piece)
        return tuple(
            Earlier(row, tuple(value_read(value, row) for value in row.values)) for row in own
        )

    @cached_property
    def others(self) -> list[ReadingRow]:
        """Readings of all its pieces that count: they say what to expect."""
        return [row for row in self.readings if not (row.superseded or row.withdrawn)]

    @property
    def next_piece(self) -> str:
        """The next piece that has no reading at this stage; "" where there is none."""
        if len(self.pieces) < 2 or self.can_only_follow:
            return ""
        read = {row.piece for row in self.others if row.stage == self.stage} | {self.piece}
        return next((piece for piece in self.pieces if piece not in read), "")

    @property
    def chains(self) -> tuple[tuple[str, str], ...]:
        """The chains of play that it is read along: key and name."""
        from shimstock.trade.measure.in_all import read_along

        trains = self.seen.book.trains.items()
        return tuple((key, train.name) for key, train in trains if self.key in read_along(train))

    def _told(self, row: VerdictRow) -> Told:
        return Told(row, told.word_told(self.seen.book, row), told.chance_told(row))

    def _touches(self, remedy: Remedy, own: tuple[str, str]) -> bool:
        same_part = [piece for piece in remedy.pieces if piece[0] == own[0]]
        return not same_part or own in same_part


def at_figure(seen: Seen, figure: str, piece: str = "", stage: str = "") -> AtFigure:
    """One figure of a machine, in two SELECTs.

    figure: its key, mark or name. piece: which; the first where none is named, or all together.
    stage: as found if not given. Raises NotFound, Refused.
    """
    key = find_figure(seen.book, figure)
    part = seen.book.measures[key].of
    named = "" if piece.strip().lower() == TOGETHER else piece.strip()
    which = find_piece(seen.book, part, named or seen.book.parts[part].instances[0])
    return AtFigure(
        seen,
        key,
        which,
        one_word(Stage, stage or Stage.FOUND, "stage"),
        list(seen.row.verdicts.filter(figure=key, current=True, piece__in=[which, TOGETHER])),
        list(seen.row.readings.filter(figure=key).order_by("-pk")),
    )
