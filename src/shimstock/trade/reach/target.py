"""What somebody wants to get at: a joint to open or a part to reach."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

from shimstock.trade.machine.book import Book, Joint, Part
from shimstock.trade.reach.pieces import piece_name


class UnknownName(ValueError):
    """A name that the book does not know."""


@dataclass(frozen=True)
class Target:
    """A joint or a part of a book, by its key.

    piece: which of several, such as left; all of them where it is empty.
    """

    kind: Literal["joint", "part"]
    key: str
    piece: str = ""

    def name(self, book: Book) -> str:
        """What the book calls it."""
        if self.kind == "joint":
            return book.joints[self.key].name
        return piece_name(book, self.key, self.piece)


def find_target(book: Book, typed: str) -> Target:
    """The joint or part that is meant by a key, a mark or a name.

    book: where to look. typed: any of the three, in any case; for one of several pieces of a part
    the piece behind it, such as "brake shoes, right".
    Raises UnknownName with the nearest name, or with both where two things share the name.
    """
    found = _meant(book, typed) or _one_piece(book, typed)
    if len(found) == 1:
        return found[0]
    if found:
        both = " or ".join(f"{target.kind} {target.key}" for target in found)
        raise UnknownName(f"{typed!r} is the name of more than one thing; {both}?")
    raise UnknownName(
        f"{typed!r} is neither a joint nor a part of {book.book}; {_near(book, typed)}"
    )


def joint_of(book: Book, key: str) -> Joint:
    """The joint with a key; UnknownName with the nearest key where there is none."""
    if key not in book.joints:
        raise UnknownName(f"{key!r} is not a joint of {book.book}; {offer(key, book.joints)}")
    return book.joints[key]


def part_of(book: Book, key: str) -> Part:
    """The part with a key; UnknownName with the nearest key where there is none."""
    if key not in book.parts:
        raise UnknownName(f"{key!r} is not a part of {book.book}; {offer(key, book.parts)}")
    return book.parts[key]


def piece_of(book: Book, key: str, piece: str) -> Part:
    """The part with a key, of which a piece is wanted; empty for all of them, or the only one.

    Raises UnknownName where there is no such part or piece.
    """
    part = part_of(book, key)
    if piece and piece not in part.instances:
        those = ", ".join(each for each in part.instances if each) or "one only"
        raise UnknownName(f"{piece!r} is not one of {part.name}; there is {those}")
    return part


def _meant(book: Book, typed: str) -> list[Target]:
    wanted = typed.strip().casefold()
    by_key = [target for target in _all(book) if target.key.casefold() == wanted]
    return by_key or [target for target in _all(book) if wanted in _called(book, target)]


def _one_piece(book: Book, typed: str) -> list[Target]:
    """Parts meant by all but the last word, where the last word is one of their pieces."""
    said = re.fullmatch(r"(.+?)[\s,/]+([^\s,/]+)\s*", typed)
    if said is None:
        return []
    parts = [target for target in _meant(book, said[1]) if target.kind == "part"]
    return [
        Target("part", target.key, piece)
        for target in parts
        for piece in book.parts[target.key].instances
        if piece.casefold() == said[2].casefold()
    ]


def _all(book: Book) -> list[Target]:
    joints = [Target("joint", key) for key in book.joints]
    return joints + [Target("part", key) for key in book.parts]


def _called(book: Book, target: Target) -> set[str]:
    entry = book.joints[target.key] if target.kind == "joint" else book.parts[target.key]
    return {name.casefold() for name in (entry.mark, entry.name) if name}


def _near(book: Book, typed: str) -> str:
    names = {target.key: target.key for target in _all(book)}
    for target in _all(book):
        names |= {name: target.key for name in _called(book, target)}
    return offer(typed.strip().casefold(), names)


def offer(typed: str, known: Mapping[str, object]) -> str:
    """The nearest known name, as a question; how many there are where none is like it."""
    near = get_close_matches(typed, list(known), n=1, cutoff=0.5)
    if not near:
        return f"it has {len(known)} names, none like it"
    meant = known[near[0]]
    return f"did you mean {meant if isinstance(meant, str) else near[0]!s}?"
