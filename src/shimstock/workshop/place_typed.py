"""Places that a person names: which one is meant, and what it is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shimstock.workshop.places import MACHINE, joint_place, piece_place
from shimstock.workshop.wording import figure_named, joint_named, piece_named

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.reach.target import Target


def target_typed(book: Book, typed: str) -> Target:
    """The joint or part that is meant by key, mark or name, or by its place.

    typed: may be a place, such as "joint:timing-cover" or "piece:pump:left".
    Raises UnknownName with the nearest name where the book has neither.
    """
    from shimstock.trade.reach.target import Target, find_target, joint_of, piece_of

    kind, _, which = typed.strip().partition(":")
    if kind == "joint" and which:
        joint_of(book, which)
        return Target("joint", which)
    if kind == "piece" and which:
        part, _, piece = which.partition(":")
        piece_of(book, part, piece)
        return Target("part", part, piece)
    return find_target(book, typed)


def place_typed(book: Book, typed: str) -> str:
    """The place that is meant: the whole machine, or a joint or part as for `target_typed`."""
    return MACHINE if typed.strip() == MACHINE else place_of(target_typed(book, typed))


def place_of(target: Target) -> str:
    """The place of a joint or part."""
    if target.kind == "joint":
        return joint_place(target.key)
    return piece_place(target.key, target.piece)


def place_called(book: Book, place: str) -> str:
    """What a person calls a place; the place itself where the book does not know it any more."""
    kind, _, which = place.partition(":")
    if kind == "joint" and which in book.joints:
        return joint_named(book, which)
    part, _, piece = which.partition(":")
    if kind == "piece" and part in book.parts:
        return piece_named(book, part, piece)
    if kind in ("reading", "verdict") and part in book.measures:
        of, _, stage = piece.rpartition(":")
        return f"{kind} of {figure_named(book, part, of)}, {stage}"
    return "the whole machine" if place == MACHINE else place
