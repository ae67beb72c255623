"""What the readings in a machine's book say of its causes and signs, without being typed again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from shimstock.trade.faults.of_book import spreads_of
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import FigureKey, VerdictNow
from shimstock.trade.machine.words import Stage, Verdict

Latest = dict[str, dict[str, tuple[FigureKey, VerdictNow]]]
"""By figure and by piece: the reading that counts, and its verdict."""


@dataclass(frozen=True)
class FromReading:
    """What one figure's readings say.

    cause or sign: which of the two it is about; the other is empty. said: True for there or seen,
    False for cleared or not seen, a number in the figure's unit where the sign is read as one.
    says: the verdict in words. after_work: whether it was read after the work.
    """

    figure: str
    says: str
    said: bool | float
    cause: str = ""
    sign: str = ""
    after_work: bool = False


def from_readings(
    book: Book,
    verdicts: Mapping[FigureKey, VerdictNow],
    values: Mapping[FigureKey, Sequence[float]],
) -> list[FromReading]:
    """What was read that settles a cause, or speaks for or against a sign.

    Of each piece the reading after the work counts, where there is one. A cause is there where any
    piece of its figures is worn out; it is cleared where every piece of them all is within its
    limit, a setting where it is good. Borderline settles nothing, nor does a figure that is off to
    the side to which it does not wear. values: the readings in the figure's unit.
    """
    latest = _latest(verdicts)
    found = [said for key in book.causes for said in _of_cause(book, key, latest, values)]
    return found + [said for key in book.signs for said in _of_sign(book, key, latest, values)]


def _latest(verdicts: Mapping[FigureKey, VerdictNow]) -> Latest:
    """By figure and piece, the verdict that counts, with the key of its reading."""
    found: Latest = {}
    for stage in (Stage.FOUND, Stage.FINISHED):
        for key, verdict in verdicts.items():
            if key[2] is stage:
                found.setdefault(key[0], {})[key[1]] = key, verdict
    return found


def _of_cause(
    book: Book, name: str, latest: Latest, values: Mapping[FigureKey, Sequence[float]]
) -> Iterator[FromReading]:
    cause = book.causes[name]
    for figure in (*cause.figures, *cause.shown_by):
        for key, verdict in latest.get(figure, {}).values():
            worn = verdict.verdict is Verdict.WORN_OUT
            if worn and not _off_the_other_side(book, figure, values.get(key, ())):
                yield FromReading(figure, verdict.says, True, cause=name, after_work=_after(key))
                return
    if cause.figures and all(_all_sound(book, figure, latest, values) for figure in cause.figures):
        first = cause.figures[0]
        key, verdict = next(iter(latest[first].values()))
        yield FromReading(first, verdict.says, False, cause=name, after_work=_after(key))


def _all_sound(
    book: Book, figure: str, latest: Latest, values: Mapping[FigureKey, Sequence[float]]
) -> bool:
    sound = (Verdict.GOOD,) if figure in book.settings else (Verdict.GOOD, Verdict.SERVICEABLE)
    read = latest.get(figure, {})
    return all(
        piece in read
        and read[piece][1].verdict in sound
        and not _off_the_other_side(book, figure, values.get(read[piece][0], ()))
        for piece in book.parts[book.measures[figure].of].instances
    )


def _off_the_other_side(book: Book, name: str, values: Sequence[float]) -> bool:
    """Whether a figure that wears was read outside its new range where no wear takes it."""
    figure = book.measures[name]
    if name in book.settings or figure.as_new is None:
        return False
    end = figure.as_new.low if figure.wears_up else figure.as_new.high
    if end is None:
        return False
    return any(value < end if figure.wears_up else value > end for value in values)


def _of_sign(
    book: Book, name: str, latest: Latest, values: Mapping[FigureKey, Sequence[float]]
) -> Iterator[FromReading]:
    key = book.signs[name].figure
    if key is None or key not in latest:
        return
    figure, read = book.measures[key], latest[key]
    if spreads_of(figure) is None:
        for word, said in ((Verdict.WORN_OUT, True), (Verdict.GOOD, False)):
            for at, verdict in read.values():
                if verdict.verdict is word:
                    yield FromReading(key, verdict.says, said, sign=name, after_work=_after(at))
                    return
        return
    side = 1 if figure.wears_up else -1
    taken = [
        (side * value, verdict.says, _after(at))
        for at, verdict in read.values()
        for value in values.get(at, ())
    ]
    if taken:
        worst, says, after_work = max(taken)
        yield FromReading(key, says, side * worst, sign=name, after_work=after_work)


def _after(key: FigureKey) -> bool:
    return key[2] is Stage.FINISHED
