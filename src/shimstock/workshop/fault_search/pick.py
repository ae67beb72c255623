"""Signs to pick from: by where they show on the machine, or by a word."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book

_ENDING = re.compile(r"(?<=\w{3})(ing|ed|es|s|e)$")

SAYS_SOMETHING = 4
"""A shorter word, as "the" or "not", is in too many signs to find one by."""
ELSEWHERE = "elsewhere"
"""Where a sign shows that names no part."""


@dataclass(frozen=True)
class SignToPick:
    """A sign as it is picked.

    said: how a person says it. part, part_name: where it shows; "" for none. minutes: to look for
    it; 0 as a rule. figure: key of the figure whose number can be said of it; "" for none.
    """

    key: str
    name: str
    mark: str
    said: str
    part: str
    part_name: str
    minutes: float
    figure: str


@dataclass(frozen=True)
class SignsAt:
    """The signs that show in one group of the machine's parts, as its drawing has the groups."""

    group: str
    signs: tuple[SignToPick, ...]


def picking(book: Book) -> tuple[SignsAt, ...]:
    """Every sign of a book by where it shows, the groups in the order of the machine's parts."""
    groups: dict[str, list[SignToPick]] = {part.group: [] for part in book.parts.values()}
    for key, sign in book.signs.items():
        group = book.parts[sign.where].group if sign.where else ELSEWHERE
        groups.setdefault(group, []).append(to_pick(book, key))
    return tuple(SignsAt(group, tuple(signs)) for group, signs in groups.items() if signs)


def found_by_word(book: Book, text: str) -> tuple[SignToPick, ...]:
    """Signs that have every word of a text in their name, mark, or how a person says them."""
    words = stems(text)
    found = (to_pick(book, key) for key in book.signs) if words else ()
    return tuple(sign for sign in found if all(word in _text(sign) for word in words))


def nearest_by_word(book: Book, text: str) -> tuple[SignToPick, ...]:
    """The signs that have most of the words of a text, the words that few signs have first.

    For what a person writes of a fault: "smokes white, will not catch".
    """
    words = [word for word in stems(text) if len(word) >= SAYS_SOMETHING]
    signs = [to_pick(book, key) for key in book.signs]
    had = {word: sum(word in _text(sign) for sign in signs) for word in words}
    worth = {
        sign.key: sum(1 / had[word] for word in words if word in _text(sign)) for sign in signs
    }
    best = max(worth.values(), default=0.0)
    near = [sign for sign in signs if 2 * worth[sign.key] > best]
    return tuple(sorted(near, key=lambda sign: -worth[sign.key]))


def brought_on_by_word(book: Book, text: str) -> tuple[SignToPick, ...]:
    """Signs that the causes bring on whose mark or name has every word: "head gasket", "C12"."""
    words = stems(text)
    meant = {
        key
        for key, cause in book.causes.items()
        if words and has_all(f"{cause.mark or ''} {cause.name}", words)
    }
    brought = (key for key, sign in book.signs.items() if not meant.isdisjoint(sign.causes))
    return tuple(to_pick(book, key) for key in brought)


def to_pick(book: Book, key: str) -> SignToPick:
    """One sign as it is picked."""
    from shimstock.workshop.fault_search.said import figure_read

    sign = book.signs[key]
    return SignToPick(
        key=key,
        name=sign.name,
        mark=sign.mark or "",
        said=sign.said or "",
        part=sign.where or "",
        part_name=book.parts[sign.where].name if sign.where else "",
        minutes=sign.minutes + sum(book.joints[joint].open for joint in sign.open),
        figure=(sign.figure or "") if figure_read(book, key) else "",
    )


def _text(sign: SignToPick) -> str:
    return plain(f"{sign.key} {sign.mark} {sign.name} {sign.said} {sign.part_name}")


def has_all(text: str, words: tuple[str, ...]) -> bool:
    """Whether a text has every one of some words, or begins of words, in it."""
    return all(word in plain(text) for word in words)


def stems(text: str) -> tuple[str, ...]:
    """The words of a text without their endings, since "gears knocking" is one gear that knocks.

    >>> stems("Gears knocking")
    ('gear', 'knock')
    """
    return tuple(_ENDING.sub("", word) for word in plain(text).split())


def plain(text: str) -> str:
    """A text without its capitals and hyphens, which nobody types the same way twice."""
    return " ".join(text.casefold().replace("-", " ").split())
