"""Bags, boxes and trays: what lies in them, and on which shelf."""

from datetime import datetime

from shimstock.workshop.ledger import Pen, writing
from shimstock.workshop.models import Bag, DiaryEntry, Machine
from shimstock.workshop.place_typed import place_called, place_typed
from shimstock.workshop.refused import NotFound, Refused

LONGEST = {"number": 40, "shelf": 100}
"""Letters that there is room for."""


def put_in_bag(
    *,
    machine: str | Machine,
    number: str,
    who: str,
    about: str = "",
    holds: str | None = None,
    shelf: str | None = None,
    at: datetime | None = None,
) -> DiaryEntry:
    """Put what came off into a bag, or say anew what it holds and on which shelf it lies.

    number: what stands on the bag. about: the joint or part that it is of, by key, mark or name;
    may be left out for a bag that is in use. What is not given stays as it is.
    Raises Refused for a bag of something else or one that is about nothing, UnknownName for a place
    the book does not know.
    """
    with writing("bag", who=who, machine=machine, at=at) as pen:
        bag = _bag(pen, _fits("number", number), place_typed(pen.book, about) if about else "")
        was = bag.shelf
        bag.holds = bag.holds if holds is None else holds.strip()
        bag.shelf = bag.shelf if shelf is None else _fits("shelf", shelf)
        pen.save(bag)
        pen.says = _said(pen, bag, was)
    return pen.entry


def empty_bag(
    *, machine: str | Machine, number: str, who: str, at: datetime | None = None
) -> DiaryEntry:
    """Empty a bag; its number is free again. Raises NotFound for a bag that is not in use."""
    with writing("empty bag", who=who, machine=machine, at=at) as pen:
        bags = pen.machine.bags.filter(withdrawn=False)
        bag = bags.filter(number=number.strip()).first()
        if bag is None:
            raise NotFound("bag", number, bags.values_list("number", flat=True))
        bag.withdrawn = True
        pen.save(bag)
        held = f" It held: {bag.holds}" if bag.holds else ""
        pen.says = f"Emptied bag {bag.number} of {place_called(pen.book, bag.about)}.{held}"
    return pen.entry


def _bag(pen: Pen, number: str, about: str) -> Bag:
    """The bag in use with a number, else a new one."""
    if not number:
        raise Refused(["The bag has no number: type what stands on it."])
    bag: Bag | None = pen.machine.bags.filter(number=number, withdrawn=False).first()
    if bag is None and not about:
        raise Refused([f"Bag {number} is not in use: say which joint or part it is for."])
    if bag is None:
        return Bag(machine=pen.machine, number=number, about=about, by=pen.who, at=pen.at)
    if about and about != bag.about:
        of = place_called(pen.book, bag.about)
        raise Refused([f"Bag {number} is of {of}: empty it first, or take another number."])
    return bag


def _fits(what: str, typed: str) -> str:
    text = " ".join(typed.split())
    if len(text) > LONGEST[what]:
        raise Refused([f"The {what} {text!r} is too long: {LONGEST[what]} letters would do."])
    return text


def _said(pen: Pen, bag: Bag, was: str) -> str:
    holds = f": {bag.holds}" if bag.holds else ""
    lies = f", on shelf {bag.shelf}" if bag.shelf else ", on no shelf yet"
    moved = f" (was on {was})" if was and was != bag.shelf else ""
    return f"Bag {bag.number} of {place_called(pen.book, bag.about)}{holds}{lies}{moved}."
