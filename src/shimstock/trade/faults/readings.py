"""What the readings in a machine's book say of its causes and signs, without being typed again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from shimstock.trade.faults.of_book import spreads_of
from shimstock.trade.machine.book import Book
from shimstock.trade.machine.state import FigureKey, VerdictNow
from shimstock.trade.machine.words import Stage, Verdict

SOUND = (Verdict.GOOD, Verdict.SERVICEABLE)


@dataclass(frozen=True)
class FromReading:
    """What one figure's readings say.

    cause or sign: which of the two it is about; the other is empty. said: True for there or seen,
    False for cleared or not seen, a number in the figure's unit where the sign is read as one.
    says: the verdict in words.
    """

    figure: str
    says: str
    said: bool | float
    cause: str = ""
    sign: str = ""


def from_readings(
    book: Book,
    verdicts: Mapping[FigureKey, VerdictNow],
    values: Mapping[FigureKey, Sequence[float]],
) -> list[FromReading]:
    """What was read that settles a cause, or speaks for or against a sign.

    Of each piece the reading after the work counts, where there is one. A cause is there where any
    piece of its figures is worn out; it is cleared where every piece of them all is within its
    limit. Borderline settles nothing. values: the readings in the figure's unit.
    """
    found = [said for key in book.causes for said in _of_cause(book, key, verdicts)]
    return found + [said for key in book.signs for said in _of_sign(book, key, verdicts, values)]


def _of_cause(
    book: Book, key: str, verdicts: Mapping[FigureKey, VerdictNow]
) -> Iterator[FromReading]:
    figures = book.causes[key].figures
    latest = {figure: dict(_latest(figure, verdicts)) for figure in figures}
    for figure in figures:
        for verdict in latest[figure].values():
            if verdict.verdict is Verdict.WORN_OUT:
                yield FromReading(figure, verdict.says, True, cause=key)
                return
    if figures and all(_all_sound(book, figure, latest[figure]) for figure in figures):
        first = next(iter(latest[figures[0]].values()))
        yield FromReading(figures[0], first.says, False, cause=key)


def _all_sound(book: Book, figure: str, latest: Mapping[str, VerdictNow]) -> bool:
    pieces = book.parts[book.measures[figure].of].instances
    return all(piece in latest and latest[piece].verdict in SOUND for piece in pieces)


def _of_sign(
    book: Book,
    key: str,
    verdicts: Mapping[FigureKey, VerdictNow],
    values: Mapping[FigureKey, Sequence[float]],
) -> Iterator[FromReading]:
    name = book.signs[key].figure
    if name is None:
        return
    figure = book.measures[name]
    latest = dict(_latest(name, verdicts))
    if spreads_of(figure) is None:
        for word, said in ((Verdict.WORN_OUT, True), (Verdict.GOOD, False)):
            for verdict in latest.values():
                if verdict.verdict is word:
                    yield FromReading(name, verdict.says, said, sign=key)
                    return
        return
    worst: tuple[float, str] | None = None
    for piece, verdict in latest.items():
        for value in values.get((name, piece, _stage(name, piece, verdicts)), ()):
            further = value if figure.wears_up else -value
            if worst is None or further > worst[0]:
                worst = further, verdict.says
    if worst is not None:
        value = worst[0] if figure.wears_up else -worst[0]
        yield FromReading(name, worst[1], value, sign=key)


def _latest(
    figure: str, verdicts: Mapping[FigureKey, VerdictNow]
) -> Iterator[tuple[str, VerdictNow]]:
    for (name, piece, stage), verdict in verdicts.items():
        if name == figure and stage is _stage(figure, piece, verdicts):
            yield piece, verdict


def _stage(figure: str, piece: str, verdicts: Mapping[FigureKey, VerdictNow]) -> Stage:
    return Stage.FINISHED if (figure, piece, Stage.FINISHED) in verdicts else Stage.FOUND
