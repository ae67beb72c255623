"""What a machine's book calls its things: the words that may be typed for each of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from shimstock.workshop.answering import answers

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book


@dataclass(frozen=True)
class Called:
    """One thing of a book: its kind, its key, its mark, its name and its pieces.

    by: what of it bears the words that were looked for, where its name does not.
    """

    kind: str
    key: str
    mark: str
    name: str
    pieces: tuple[str, ...] = ()
    by: str = ""


def names(book: Book, words: list[str]) -> list[Called]:
    """Everything that answers to all the words, the best answer first; all there is without a word.

    A thing answers by its key, mark or name, by the book's other words for it, and a joint by what
    it uses and what holds it.
    """
    if not " ".join(words).strip():
        return [each for each, _ in _all(book)]
    found = []
    for each, others in _all(book):
        how = answers(words, marks=(each.key, each.mark), name=each.name, others=others)
        if how is not None:
            found.append((how[0], replace(each, by=how[1])))
    return [each for _, each in sorted(found, key=lambda one: one[0])]


def _all(book: Book) -> Iterator[tuple[Called, tuple[str, ...]]]:
    """Every thing that has a name, with the other words that it is looked for by."""
    for key, part in book.parts.items():
        yield Called("part", key, part.mark or "", part.name, _several(part)), part.words
    for key, joint in book.joints.items():
        uses = [
            use.name if use.kind in use.name else f"{use.name}, {use.kind}" for use in joint.uses
        ]
        held = [each.what for each in joint.fasteners]
        yield Called("joint", key, joint.mark or "", joint.name), (*joint.words, *uses, *held)
    for kind, entries in (("figure", book.figures), ("setting", book.settings)):
        for key, figure in entries.items():
            pieces = _several(book.parts[figure.of])
            yield Called(kind, key, figure.mark or "", figure.name, pieces), figure.words
    for key, train in book.trains.items():
        yield Called("train", key, "", train.name), ()
    for key, sign in book.signs.items():
        said = (sign.said or "", *sign.also_said)
        yield Called("sign", key, sign.mark or "", sign.name), tuple(each for each in said if each)
    for key, cause in book.causes.items():
        yield Called("cause", key, cause.mark or "", cause.name), ()
    for key, gate in book.gates.items():
        yield Called("gate", key, "", gate.name), ()
        for point, asked in gate.points.items():
            yield Called("question", point, "", asked.ask), ()


def _several(part: Any) -> tuple[str, ...]:
    return tuple(piece for piece in part.instances if piece)
