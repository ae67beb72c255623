"""What is left: gates not passed, figures not measured, and the cautions that stay with it."""

from collections.abc import Iterator
from dataclasses import dataclass

from shimstock.faces.paper.gates import GateTold, gates_told
from shimstock.faces.paper.kept import Kept
from shimstock.faces.paper.wording import Under, day, sentence, under
from shimstock.trade.machine.book import Caution, Point


@dataclass(frozen=True)
class CautionLeft:
    """A hazard that stays with the machine, and whom to ask."""

    name: str
    do: str
    never: str
    defer: str
    source: str
    answers: tuple[str, ...]


@dataclass(frozen=True)
class Left:
    """What a buyer has to know that was not done."""

    gates: tuple[GateTold, ...]
    not_measured: tuple[Under, ...]
    not_measured_count: int
    cautions: tuple[CautionLeft, ...]
    """Those that stay with the machine itself, whoever has it."""
    for_work: tuple[CautionLeft, ...]
    """Those that belong to work on it."""


def left(kept: Kept) -> Left:
    """Gates, figures and cautions, each in the order of the book."""
    missing = _not_measured(kept)
    staying = _staying(kept)
    cautions = {key: _caution(kept, one) for key, one in kept.book.cautions.items()}
    return Left(
        gates=gates_told(kept),
        not_measured=missing,
        not_measured_count=sum(1 for _ in _unread(kept)),
        cautions=tuple(one for key, one in cautions.items() if key in staying),
        for_work=tuple(one for key, one in cautions.items() if key not in staying),
    )


def _staying(kept: Kept) -> set[str]:
    """Cautions that a new owner needs: what is in the iron, and what the running gates name."""
    iron = {key for key, caution in kept.book.cautions.items() if caution.stays}
    named = {key for gate in kept.book.gates.values() if gate.running for key in gate.cautions}
    asked = {
        key
        for key, caution in kept.book.cautions.items()
        for point in _points(kept).values()
        if set(point.before_closing) & set(caution.dangers)
    }
    return iron | named | asked


def _not_measured(kept: Kept) -> tuple[Under, ...]:
    """Figures without a verdict, by the group of their part; the pieces in one bracket."""
    pieces: dict[str, list[str]] = {}
    for key, piece in _unread(kept):
        pieces.setdefault(key, []).append(piece)
    return under((_group(kept, key), _bracketed(kept, key, which)) for key, which in pieces.items())


def _unread(kept: Kept) -> Iterator[tuple[str, str]]:
    judged = {(figure, piece) for figure, piece, _ in kept.verdicts}
    for key, figure in kept.book.measures.items():
        for piece in kept.book.parts[figure.of].instances:
            if (key, piece) not in judged:
                yield key, piece


def _group(kept: Kept, figure: str) -> str:
    return kept.book.parts[kept.book.measures[figure].of].group


def _bracketed(kept: Kept, figure: str, pieces: list[str]) -> str:
    """The figure's name, and which pieces where it is not all of them."""
    name = kept.book.measures[figure].name
    every = kept.book.parts[kept.book.measures[figure].of].instances
    return name if len(pieces) == len(every) else f"{name} ({', '.join(pieces)})"


def _caution(kept: Kept, caution: Caution) -> CautionLeft:
    return CautionLeft(
        name=caution.name,
        do=sentence(caution.do),
        never=sentence(caution.never),
        defer=sentence(caution.defer or ""),
        source=caution.source or "",
        answers=tuple(_answers(kept, caution)),
    )


def _answers(kept: Kept, caution: Caution) -> Iterator[str]:
    """What was answered to the questions that wait for this caution's dangers, or that none was."""
    for name, point in _points(kept).items():
        if set(point.before_closing) & set(caution.dangers):
            answer = kept.now.answers.get(name)
            said = (
                "not answered"
                if answer is None
                else (f"{answer.answer} ({answer.by}, {day(answer.on)})")
            )
            yield f"{point.ask} {said}"


def _points(kept: Kept) -> dict[str, Point]:
    return {name: point for gate in kept.book.gates.values() for name, point in gate.points.items()}
