"""What a machine's book calls its things: the words that may be typed for each of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


@dataclass(frozen=True)
class Called:
    """One thing of a book: its kind, its key, its mark, its name and its pieces."""

    kind: str
    key: str
    mark: str
    name: str
    pieces: tuple[str, ...] = ()


def names(book: Book, words: list[str]) -> list[Called]:
    """Everything that has all the words in its key, mark or name; all there is without a word."""
    wanted = [_bare(word) for word in words]
    return [each for each in _all(book) if all(word in _text(each) for word in wanted)]


def _all(book: Book) -> Iterator[Called]:
    for key, joint in book.joints.items():
        yield Called("joint", key, joint.mark or "", joint.name)
    for key, part in book.parts.items():
        yield Called("part", key, part.mark or "", part.name, _several(part))
    for kind, entries in (("figure", book.figures), ("setting", book.settings)):
        for key, figure in entries.items():
            pieces = _several(book.parts[figure.of])
            yield Called(kind, key, figure.mark or "", figure.name, pieces)
    for key, train in book.trains.items():
        yield Called("train", key, "", train.name)
    for key, sign in book.signs.items():
        yield Called("sign", key, sign.mark or "", sign.name)
    for key, cause in book.causes.items():
        yield Called("cause", key, cause.mark or "", cause.name)
    for key, gate in book.gates.items():
        yield Called("gate", key, "", gate.name)
        for point, asked in gate.points.items():
            yield Called("question", point, "", asked.ask)


def _several(part: Any) -> tuple[str, ...]:
    return tuple(piece for piece in part.instances if piece)


def _text(each: Called) -> str:
    return _bare(f"{each.key} {each.mark} {each.name}")


def _bare(text: str) -> str:
    return text.strip().lower().replace("-", " ")
