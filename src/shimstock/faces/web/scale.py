"""What was read, drawn on a scale between the new range and the wear limit."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import floor, log10
from typing import TYPE_CHECKING

from shimstock.trade.machine.words import Stage
from shimstock.trade.measure.at_size import at_size
from shimstock.trade.measure.words import between
from shimstock.trade.numbers.limits import Range
from shimstock.trade.numbers.quantity import show

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Figure
    from shimstock.trade.measure.reading import Reading
    from shimstock.workshop.at_figure import AtFigure

WIDE, TOP, ROW, FOOT, SIDE = 360.0, 44.0, 34.0, 34.0, 20.0
LETTER = 7.6  # width of one letter, about
SHAPES = ("circle", "square", "triangle", "diamond")


@dataclass(frozen=True)
class Point:
    """A value on the scale; low, high: the ends of its uncertainty. All in the picture's units."""

    x: float
    low: float
    high: float
    y: float
    shape: str


@dataclass(frozen=True)
class Mark:
    """A place on the scale with words at it; anchor: which end of the words stands there."""

    x: float
    says: str
    anchor: str = "middle"


@dataclass(frozen=True)
class Strip:
    """A stretch of the scale."""

    x: float
    wide: float
    mark: Mark


@dataclass(frozen=True)
class Scale:
    """A scale, ready to be drawn."""

    title: str
    says: str
    tall: float
    rows: tuple[tuple[float, str], ...]
    points: tuple[Point, ...]
    new: Strip | None
    limits: tuple[Mark, ...]
    beyond: tuple[Strip, ...]
    ticks: tuple[Mark, ...]
    shapes: tuple[tuple[str, str], ...]
    unit: str

    wide = WIDE
    top = TOP - 8

    @property
    def base(self) -> float:
        """Where the line of the scale lies."""
        return self.tall - FOOT

    @property
    def tick(self) -> float:
        """Where the small lines at round values end."""
        return self.base + 6

    @property
    def below(self) -> float:
        """Where the numbers under the scale stand."""
        return self.base + 22

    @property
    def deep(self) -> float:
        """How deep the strips hang from the top to that line."""
        return self.base - self.top


@dataclass(frozen=True)
class _Read:
    """A value to be drawn: in which row, of which direction; give: its ±, k = 2."""

    row: str
    direction: str
    value: float
    give: float


def scales(at: AtFigure) -> list[Scale]:
    """The pictures of one piece of a figure: as found, as finished; none where nothing limits it.

    A figure that is read at several places has a picture for each stage, else one holds both.
    """
    if at.entry.as_new is None and at.entry.allowed is None:
        return []
    read = {stage: _read(at, stage) for stage in Stage}
    held = {stage: _held_against(at, stage) for stage in Stage if read[stage]}
    if at.entry.at is None and all(figure is at.entry for figure in held.values()):
        both = [each for stage in Stage for each in read[stage]]
        return [_scale(at.entry, "On the scale", both)] if both else []
    return [
        _scale(figure, f"{stage.value.capitalize()}{_size(at.entry, figure)}", read[stage])
        for stage, figure in held.items()
    ]


def _held_against(at: AtFigure, stage: Stage) -> Figure:
    """The figure that a stage is held against: for the size that it is at."""
    trace = at.traces.get(stage)
    return at_size(at.entry, trace, stage) if trace else at.entry


def _size(standard: Figure, figure: Figure) -> str:
    """The size of a figure that is not at its standard size: ", +0.020 in"."""
    return figure.name.removeprefix(standard.name)


def _read(at: AtFigure, stage: Stage) -> list[_Read]:
    """What is drawn of a stage: each place, else the one value that the verdict is on."""
    if (trace := at.traces.get(stage)) is not None:
        return list(_places(at.entry, trace, stage))
    if (verdict := at.verdicts.get(stage)) is not None:
        row = verdict.row
        return [_Read(stage.value, "", row.value, float(row.data.get("expanded") or 0))]
    return []


def _places(figure: Figure, trace: Reading, stage: Stage) -> Iterable[_Read]:
    for n, value in trace.taken:
        give = 2 * trace.u(value)
        if figure.at is None:
            yield _Read(stage.value, "", value, give)
        elif figure.at.depths:
            across, depth = divmod(n, len(figure.at.depths))
            yield _Read(figure.at.depths[depth], figure.at.across[across], value, give)
        else:
            yield _Read(figure.at.labels[n], "", value, give)


def _scale(figure: Figure, title: str, read: Sequence[_Read]) -> Scale:
    unit, new, allowed = figure.measured_in, figure.as_new, figure.allowed
    rows = list(dict.fromkeys(each.row for each in read))
    directions = list(dict.fromkeys(each.direction for each in read if each.direction))
    left = SIDE + LETTER * min(14, max(map(len, rows)))
    low, high = _ends(figure, read)

    def x(value: float) -> float:
        return round(left + (value - low) / (high - low) * (WIDE - SIDE - left), 1)

    def y(row: str) -> float:
        return TOP + ROW * (rows.index(row) + 0.5)

    ends = _limit_ends(allowed) if figure.limit else []
    return Scale(
        title=title,
        says=_in_words(figure, title, read),
        tall=TOP + ROW * len(rows) + FOOT,
        rows=tuple((y(row), row if len(row) <= 14 else f"{row[:13]}…") for row in rows),
        points=tuple(
            Point(
                x(each.value), x(each.value - each.give), x(each.value + each.give), y(each.row),
                SHAPES[directions.index(each.direction) % 4] if each.direction else SHAPES[0],
            )
            for each in read
        ),
        new=_new(new, low, high, x),
        limits=tuple(_mark(x(end), f"limit {_short(end, unit)}", left) for end, _ in ends),
        beyond=tuple(
            Strip(x(end), round(WIDE - SIDE - x(end), 1), _mark(x(end), "", left))
            if up
            else Strip(left, round(x(end) - left, 1), _mark(left, "", left))
            for end, up in ends
        ),
        ticks=tuple(Mark(x(value), says) for value, says in _ticks(low, high)),
        shapes=tuple((SHAPES[n % 4], each) for n, each in enumerate(directions)),
        unit=unit,
    )  # fmt: skip


def _ends(figure: Figure, read: Iterable[_Read]) -> tuple[float, float]:
    """What the scale spans: all that was read, and the ends that the book prints."""
    ranges = (figure.as_new, figure.allowed)
    held = [end for each in ranges if each for end in (each.low, each.high) if end is not None]
    held += [each.value + give for each in read for give in (-each.give, each.give)]
    low, high = min(held), max(held)
    room = 0.08 * (high - low) or 0.1 * abs(high) or 1.0
    return low - room, high + room


def _limit_ends(allowed: Range | None) -> list[tuple[float, bool]]:
    """Each end of what is allowed, and whether too much lies above it."""
    if allowed is None:
        return []
    ends = ((allowed.low, False), (allowed.high, True))
    return [(end, up) for end, up in ends if end is not None]


def _new(new: Range | None, low: float, high: float, x: Callable[[float], float]) -> Strip | None:
    if new is None:
        return None
    start = x(low if new.low is None else new.low)
    wide = max(2.0, round(x(high if new.high is None else new.high) - start, 1))
    return Strip(start, wide, _mark(start + wide / 2, "new", SIDE))


def _mark(x: float, says: str, left: float) -> Mark:
    """Words at a place, turned inwards near an end of the picture."""
    half = LETTER * len(says) / 2
    if x + half > WIDE - 4:
        return Mark(round(x, 1), says, "end")
    return Mark(round(x, 1), says, "start" if x - half < left else "middle")


def _short(value: float, unit: str) -> str:
    return f"{value:.6g} {unit}".replace("-", "−")


def _ticks(low: float, high: float) -> list[tuple[float, str]]:
    """Three or four round values on the scale, each with no more decimals than it needs."""
    rough = (high - low) / 3
    power = 10.0 ** floor(log10(rough))
    step = next(each * power for each in (10, 5, 2, 1) if each * power <= rough)
    decimals = max(0, -floor(log10(step) + 1e-9))
    first = floor(low / step) + 1
    found = [first * step + n * step for n in range(6)]
    every = [each for each in found if each <= high]
    kept = every if len(every) <= 3 else every[::2]
    return [(each, f"{each:.{decimals}f}".replace("-", "−")) for each in kept]


def _in_words(figure: Figure, title: str, read: Iterable[_Read]) -> str:
    """The picture for those who cannot see it."""
    unit = figure.measured_in
    new = f"new {between(figure.as_new)}" if figure.as_new else ""
    ends = _limit_ends(figure.allowed) if figure.limit else []
    limit = f"limit {', '.join(_short(end, unit) for end, _ in ends)}" if ends else ""
    values = (f"{f'{each.direction} {each.row}'.strip()} {show(each.value, unit)}" for each in read)
    return f"{title}: {'; '.join(each for each in (new, limit, ', '.join(values)) if each)}"
