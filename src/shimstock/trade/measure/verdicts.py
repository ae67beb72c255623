"""Every figure of a machine with its verdict, as found and as finished side by side."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace

from shimstock.trade.machine.book import Book, Figure
from shimstock.trade.machine.state import FigureKey, VerdictNow
from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.at_size import at_size
from shimstock.trade.measure.bore import at_place, largest, mean, out_of_round, smallest, taper
from shimstock.trade.measure.clearance import clearance
from shimstock.trade.measure.in_all import as_a_sum, parted_by
from shimstock.trade.measure.judge import Judged, judge, margin
from shimstock.trade.measure.measured import Measured
from shimstock.trade.measure.pair import TOGETHER, compare
from shimstock.trade.measure.reading import Reading

Readings = Mapping[FigureKey, Reading]


@dataclass(frozen=True)
class Row:
    """One figure of one piece: as found beside as finished."""

    figure: str
    piece: str
    found: Judged | None
    finished: Judged | None

    @property
    def latest(self) -> Judged | None:
        """The verdict that counts now."""
        return self.finished or self.found


@dataclass(frozen=True)
class Verdicts:
    """What is known of a machine's figures.

    judged: by figure, piece and stage; the piece "together" holds how far the several differ.
    measured: the values behind it. not_measured: figures and pieces with no reading at all.
    """

    judged: Mapping[FigureKey, Judged]
    measured: Mapping[FigureKey, Measured]
    not_measured: tuple[tuple[str, str], ...]

    @property
    def side_by_side(self) -> tuple[Row, ...]:
        """Each figure and piece that was read, as found and as finished on one line."""
        keys = dict.fromkeys((figure, piece) for figure, piece, _ in self.judged)
        return tuple(
            Row(*key, *(self.judged.get((*key, stage)) for stage in (Stage.FOUND, Stage.FINISHED)))
            for key in keys
        )

    def latest(self, figure: str, piece: str = "") -> Judged | None:
        """The verdict that counts now: as finished if there is one, else as found."""
        finished = self.judged.get((figure, piece, Stage.FINISHED))
        return finished or self.judged.get((figure, piece, Stage.FOUND))

    def latest_measured(self, figure: str, piece: str = "") -> Measured | None:
        """The value that counts now: as finished if there is one, else as found."""
        finished = self.measured.get((figure, piece, Stage.FINISHED))
        return finished or self.measured.get((figure, piece, Stage.FOUND))

    @property
    def now(self) -> dict[FigureKey, VerdictNow]:
        """The verdicts as a machine's state keeps them; figures known by size only are left out."""
        return {
            key: VerdictNow(judged.verdict, judged.says)
            for key, judged in self.judged.items()
            if judged.verdict is not None
        }


def verdicts(book: Book, readings: Readings, only: Collection[str] | None = None) -> Verdicts:
    """Judge everything that was read, and everything that follows from it.

    A value read directly wins over one worked out from other figures. only: judge these figures
    alone, by all readings; without it, every figure of the book.
    """
    figures = {key: each for key, each in book.measures.items() if only is None or key in only}
    measured = dict(_all_measured(book, figures, readings))
    judged = {key: _judged(book, key, value, readings) for key, value in measured.items()}
    for figure_key, figure in figures.items():
        for stage in Stage:
            several = _several(book, figure_key, readings, measured, stage)
            together = compare(figure_key, figure, several)
            if together is not None:
                judged[figure_key, TOGETHER, stage] = together
    return Verdicts(judged, measured, tuple(_unread(book, figures, measured)))


def _several(
    book: Book,
    key: str,
    readings: Readings,
    measured: Mapping[FigureKey, Measured],
    stage: Stage,
) -> dict[str, Measured]:
    """What is compared with each other: the pieces, or the places where there is one piece."""
    figure = book.measures[key]
    pieces = _pieces(book, figure)
    reading = readings.get((key, pieces[0], stage))
    if len(pieces) == 1 and reading is not None and figure.at and figure.at.places:
        labels = figure.at.labels
        return {labels[at]: at_place(figure, reading, at) for at, _ in reading.taken}
    read = {p: readings[key, p, stage] for p in pieces if (key, p, stage) in readings}
    if read and figure.judge == "worst" and _two_sided(figure):
        return _like_ends(figure, read)
    return {
        piece: measured[key, piece, stage] for piece in pieces if (key, piece, stage) in measured
    }


def _two_sided(figure: Figure) -> bool:
    limit = figure.allowed
    return limit is not None and limit.low is not None and limit.high is not None


def _like_ends(figure: Figure, read: Mapping[str, Reading]) -> dict[str, Measured]:
    """The highest places of all pieces, or the lowest, whichever differ more.

    Judged by its worst place, one piece may stand by its highest and another by its lowest; those
    two say nothing of how far the pieces differ.
    """
    highest, lowest = (
        {piece: end(figure, reading) for piece, reading in read.items()}
        for end in (largest, smallest)
    )
    return max(highest, lowest, key=_apart)


def _apart(several: Mapping[str, Measured]) -> float:
    values = [each.value for each in several.values()]
    return max(values) - min(values)


def _pieces(book: Book, figure: Figure) -> tuple[str, ...]:
    return book.parts[figure.of].instances


def _all_measured(
    book: Book, figures: Mapping[str, Figure], readings: Readings
) -> Iterator[tuple[FigureKey, Measured]]:
    for figure_key, figure in figures.items():
        for piece in _pieces(book, figure):
            for stage in Stage:
                value = measure(book, figure_key, readings, piece, stage)
                if value is not None:
                    yield (figure_key, piece, stage), value


def measure(
    book: Book, figure_key: str, readings: Readings, piece: str, stage: Stage
) -> Measured | None:
    """The value of a figure: read directly, else worked out from others; None where neither is."""
    figure = book.measures[figure_key]
    reading = readings.get((figure_key, piece, stage))
    if reading is not None:
        return of_reading(figure, reading)
    derive = figure.derive
    if derive is None:
        return None
    if derive.hole and derive.shaft:
        hole = _worst_of(book, derive.hole, readings, figure, piece, stage)
        shaft = _worst_of(book, derive.shaft, readings, figure, piece, stage)
        return clearance(hole, shaft, figure.measured_in) if hole and shaft else None
    source_key = derive.taper_of or derive.out_of_round_of or ""
    source = _source(book, source_key, readings, piece, stage)
    if source is None:
        return None
    work_out = taper if derive.taper_of else out_of_round
    worked = work_out(book.measures[source_key], source)
    return worked.told_in(figure.measured_in) if worked else None


def of_reading(figure: Figure, reading: Reading) -> Measured:
    """The value that a reading is judged by: its mean, or its worst place."""
    if figure.judge == "mean":
        return mean(figure, reading)
    limit = figure.allowed
    if limit is None or limit.low is None:
        return largest(figure, reading)
    if limit.high is None:
        return smallest(figure, reading)
    top, bottom = largest(figure, reading), smallest(figure, reading)
    return top if margin(limit, top.value) < margin(limit, bottom.value) else bottom


def _worst_of(
    book: Book, key: str, readings: Readings, gap: Figure, piece: str, stage: Stage
) -> Measured | None:
    """The hole's largest or the shaft's smallest reading, or the mean where the gap goes by it."""
    reading = _source(book, key, readings, piece, stage)
    if reading is None:
        return None
    figure = book.measures[key]
    if gap.judge == "mean":
        return mean(figure, reading)
    is_hole = gap.derive is not None and key == gap.derive.hole
    return largest(figure, reading) if is_hole else smallest(figure, reading)


def _source(book: Book, key: str, readings: Readings, piece: str, stage: Stage) -> Reading | None:
    """The reading of another figure that belongs to this piece."""
    theirs = _pieces(book, book.measures[key])
    if piece in theirs:
        return readings.get((key, piece, stage))
    return readings.get((key, "", stage)) if theirs == ("",) else None


def _judged(book: Book, key: FigureKey, value: Measured, readings: Readings) -> Judged:
    figure_key, piece, stage = key
    figure, reading = book.measures[figure_key], readings.get(key)
    judged = judge(
        figure_key,
        at_size(figure, reading, stage) if reading else figure,
        *(value.value, value.u),
        piece=piece,
        working=value.working,
        symbol=value.symbol,
        gauge=value.gauge,
    )
    if value.place:
        judged = replace(judged, says=f"{judged.says} ({value.place})")
    if not judged.beyond or _adjusted(book, figure_key):
        return judged
    train = next((each for each in book.trains.values() if each.figure == figure_key), None)
    return as_a_sum(train, judged, parted_by(book, train, readings, stage)) if train else judged


def _adjusted(book: Book, figure: str) -> bool:
    """Whether a figure is the play of a whole train that adjusting takes up."""
    return any(each.adjusted for each in book.trains.values() if each.figure == figure)


def _unread(
    book: Book, figures: Mapping[str, Figure], measured: Mapping[FigureKey, Measured]
) -> Iterator[tuple[str, str]]:
    for figure_key, figure in figures.items():
        for piece in _pieces(book, figure):
            if not any((figure_key, piece, stage) in measured for stage in Stage):
                yield figure_key, piece
