"""Signs to pick from: by where they show on the machine, or by a word."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book

_ENDING = re.compile(r"(?<=\w{3})(ing|ed|es|s|e)$")

_DOUBLED = re.compile(r"(?<=\w\w)([bdgmnprt])\1$")
_PHRASES = re.compile(r"[,;:]")
_TURNS = "no not without never won't can't cannot doesn't don't isn't wont cant doesnt dont"
_NOT = frozenset(_TURNS.split())
"""Words that turn the next one round: what is "without smoke" is not found by "smoke"."""
_EVERYWHERE = """a all always am an and are as at be been but by can could did do does engine for
from get gets go goes going gone got had has have he her hers his i if in into is it its itself just
like looks machine my of off on or out over own she so some than that the their them then there they
this to tractor until up very was we were when where which while will with would you
crawler diesel petrol"""
_SAYS_NOTHING = frozenset(_EVERYWHERE.split())
"""Words that are in too many signs to find one by."""
SAME_WORD = 4
"""Letters that two words must share to be one, where one goes on: "smok", "smoky"."""
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
    """Signs that have every word of a text in what they are called and how people say them.

    The best fitting come first.
    """
    words = telling(text) or stems(text)
    found = {key for key in book.signs if words and all(map(_in_sign(book, key), words))}
    return _by_fit(book, words, found)


def nearest_by_word(book: Book, text: str) -> tuple[SignToPick, ...]:
    """The signs that a text comes nearest to, the best fitting first.

    A sign is found where the text has all of one way to say it, or the word that its name begins
    with: "Clutch". The others are those that have most of the text's words, the words that few
    signs have counting most. For what a person writes of a fault: "smokes white, will not catch".
    """
    words = telling(text)
    worth = _worth(book, words)
    best = max(worth.values(), default=0.0)
    near = {key for key in book.signs if 2 * worth[key] > best or _begins(book, key, words)}
    return _by_fit(book, words, near.union(wholly_said(book, text)))


def wholly_said(book: Book, text: str) -> tuple[str, ...]:
    """Keys of the signs whose name, or one way to say them, is in a text as a whole."""
    words = telling(text)
    return tuple(key for key in book.signs if _wholly_said(book, key, words))


def _by_fit(book: Book, words: tuple[str, ...], keys: Collection[str]) -> tuple[SignToPick, ...]:
    """Signs by the longest way to say them that the words hold, then by the words they have."""
    worth = _worth(book, words)
    order = sorted(
        (key for key in book.signs if key in keys),
        key=lambda key: (-_wholly_said(book, key, words), -worth[key]),
    )
    return tuple(to_pick(book, key) for key in order)


def _worth(book: Book, words: tuple[str, ...]) -> dict[str, float]:
    """How much of some words each sign has; a word counts less the more signs have it."""
    has = {key: _in_sign(book, key) for key in book.signs}
    had = {word: [key for key in book.signs if has[key](word)] for word in words}
    return {key: sum(1 / len(have) for have in had.values() if key in have) for key in book.signs}


def _wholly_said(book: Book, key: str, words: tuple[str, ...]) -> int:
    """How many words the longest way to say a sign has that some words hold whole; 0 for none."""
    return max(
        (
            len(phrase)
            for phrase in _phrases(book, key)
            if phrase and all(any(_same(word, each) for word in words) for each in phrase)
        ),
        default=0,
    )


def _begins(book: Book, key: str, words: tuple[str, ...]) -> bool:
    """Whether the name of a sign begins with one of some words."""
    head = telling(book.signs[key].name)[:1]
    return any(_same(word, each) for word in words for each in head)


def _phrases(book: Book, key: str) -> Iterator[tuple[str, ...]]:
    """The ways to say a sign: its name and what people say, each by its telling words."""
    sign = book.signs[key]
    for text in (sign.name, sign.said or "", *sign.also_said):
        yield from map(telling, _PHRASES.split(text))


def _in_sign(book: Book, key: str) -> Callable[[str], bool]:
    """Whether a word is in what a sign is called, where it shows, or how people say it."""
    sign = to_pick(book, key)
    texts = (sign.key, sign.mark, sign.name, sign.said, sign.part_name, *book.signs[key].also_said)
    has = [word for text in texts for each in _PHRASES.split(text) for word in _turned(each)]
    return lambda word: any(_same(word, each) for each in has)


def _same(word: str, other: str) -> bool:
    """Whether a word that is typed may be another one: that, its beginning, or a form of it."""
    return other.startswith(word) or (len(other) >= SAME_WORD and word.startswith(other))


def telling(text: str) -> tuple[str, ...]:
    """The words of a text that a sign can be found by, each once.

    >>> telling("the engine will not stop")
    ('not-stop',)
    """
    words = (word for word in _turned(text) if word not in _SAYS_NOTHING)
    return tuple(dict.fromkeys(words))


def _turned(text: str) -> Iterator[str]:
    """The words of a text without their endings; one that is turned round is another word."""
    turned = False
    for word in re.findall(r"[\w'/]+", plain(text).replace("’", "'")):
        if word in _NOT:
            turned = True
        elif word in _SAYS_NOTHING:
            yield word
        else:
            yield f"not-{_stem(word)}" if turned else _stem(word)
            turned = False


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


def has_all(text: str, words: tuple[str, ...]) -> bool:
    """Whether a text has every one of some words, or begins of words, in it."""
    return all(word in plain(text) for word in words)


def stems(text: str) -> tuple[str, ...]:
    """The words of a text without their endings, since "gears knocking" is one gear that knocks.

    >>> stems("Gears knocking")
    ('gear', 'knock')
    """
    return tuple(_stem(word) for word in plain(text).split())


def _stem(word: str) -> str:
    """A word without its ending, and without the letter that the ending doubled."""
    return _DOUBLED.sub(r"\1", _ENDING.sub("", word))


def plain(text: str) -> str:
    """A text without its capitals and hyphens, which nobody types the same way twice."""
    return " ".join(text.casefold().replace("-", " ").split())
