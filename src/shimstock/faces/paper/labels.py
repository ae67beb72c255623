"""Labels for bags, shelves, joints and parts, each with a square that opens its page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING

from shimstock.faces.paper.square import address_of, drawn, square_of
from shimstock.faces.paper.typeset import typeset
from shimstock.faces.paper.wording import capital
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.labels import BAG, JOINT, PART, SHELF, Labelled
from shimstock.workshop.place_typed import place_called
from shimstock.workshop.places import joint_place
from shimstock.workshop.refused import Refused
from shimstock.workshop.told import shelves_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from shimstock.workshop.looking import Seen
    from shimstock.workshop.models import Bag

TEMPLATE = "labels.typ"


@dataclass(frozen=True)
class Sheet:
    """How labels lie on a page; all in millimetres.

    name: what a person calls it. width, height: of the page. square: room for the QR code.
    """

    name: str
    width: float
    height: float
    across: int
    down: int
    label_width: float
    label_height: float
    square: float

    @property
    def each(self) -> int:
        """Labels on a page."""
        return self.across * self.down


SHEETS = {
    "a4": Sheet("A4, 3 × 8 labels of 70 × 37 mm", 210, 297, 3, 8, 70, 37, 29),
    "letter": Sheet("Letter, 3 × 8 labels of 2.83 × 1.37 in", 215.9, 279.4, 3, 8, 71.96, 34.9, 27),
    "roll": Sheet("Roll, 50 × 30 mm, one label a page", 50, 30, 1, 1, 50, 30, 26),
}


@dataclass(frozen=True)
class Wanted:
    """Which labels to print. joints, parts: keys in the book."""

    open_joints: bool = False
    bags: bool = False
    shelves: bool = False
    joints: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


@dataclass(frozen=True)
class Label:
    """What is printed on one label."""

    labelled: Labelled
    mark: str
    name: str
    where: str


def labels_of(seen: Seen, wanted: Wanted) -> tuple[Label, ...]:
    """The labels of a machine that are wanted, each once: bags, shelves, joints, then parts.

    Raises KeyError for a joint or part that is not in the book.
    """
    told = _Told(seen)
    open_ = [key for key in seen.book.joints if key in seen.now.open_joints]
    joints = [*(open_ if wanted.open_joints else ()), *wanted.joints]
    found: list[Label] = []
    found += [told.bag(bag) for bag in told.bags] if wanted.bags else ()
    found += told.shelves() if wanted.shelves else ()
    found += (told.joint(key) for key in dict.fromkeys(joints))
    found += (told.part(key) for key in dict.fromkeys(wanted.parts))
    return tuple(found)


def labels_pdf(
    seen: Seen, labels: Sequence[Label], *, base: str, sheet: str = "a4", start: int = 1
) -> bytes:
    """Labels as a PDF.

    base: where phones find the shed, such as http://192.168.1.20:8140. sheet: one of SHEETS.
    start: the first label that is still on a part-used sheet, counted along the rows.
    Raises Refused where there is no label, NotUnderstood for a start beyond the sheet or an address
    too long to be read.
    """
    if not labels:
        raise Refused(["No label is chosen: tick at least one thing to print a label for."])
    on = SHEETS[sheet]
    if not 1 <= start <= on.each:
        wrong = f"is no place on this sheet, which has {on.each}"
        raise NotUnderstood(str(start), wrong, ("1",))
    cells = [_cell(seen, label, base, on) for label in labels]
    data = {"sheet": asdict(on), "cells": [None] * (start - 1) + cells, "machine": seen.row.name}
    return typeset(TEMPLATE, data)


def _cell(seen: Seen, label: Label, base: str, on: Sheet) -> dict[str, str]:
    square = square_of(address_of(base, label.labelled), on.square)
    words = {"mark": label.mark, "name": label.name, "where": label.where}
    return {"square": drawn(square), **words}


class _Told:
    """Words for the labels of one machine, with its bags looked up once."""

    def __init__(self, seen: Seen) -> None:
        self.book = seen.book
        self.slug = seen.row.slug
        self.by_shelf = shelves_of(seen.row)
        self.bags = [bag for shelf in self.by_shelf for bag in shelf.bags]

    def bag(self, bag: Bag) -> Label:
        """A bag, with what it is of."""
        name = capital(place_called(self.book, bag.about))
        where = f"Shelf {bag.shelf}" if bag.shelf else ""
        return Label(Labelled(self.slug, BAG, bag.number), f"Bag {bag.number}", name, where)

    def shelves(self) -> Iterator[Label]:
        """Each shelf, with the bags that lie on it."""
        for shelf in self.by_shelf:
            if shelf.name:
                held = ", ".join(bag.number for bag in shelf.bags)
                of = Labelled(self.slug, SHELF, shelf.name)
                yield Label(of, f"Shelf {shelf.name}", f"Bags {held}", "")

    def joint(self, key: str) -> Label:
        """A joint, with the bag that holds what came off it."""
        joint = self.book.joints[key]
        of = Labelled(self.slug, JOINT, key)
        where = _where(bag for bag in self.bags if bag.about == joint_place(key))
        return Label(of, joint.mark or "Joint", capital(joint.name), where)

    def part(self, key: str) -> Label:
        """A part, with the bag that it lies in."""
        part = self.book.parts[key]
        of = Labelled(self.slug, PART, key)
        where = _where(bag for bag in self.bags if bag.about.startswith(f"piece:{key}:"))
        return Label(of, part.mark or "Part", capital(part.name), where)


def _where(bags: Iterable[Bag]) -> str:
    return "; ".join(
        f"Bag {bag.number}" + (f", shelf {bag.shelf}" if bag.shelf else "") for bag in bags
    )
