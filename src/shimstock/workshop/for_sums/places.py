"""What can be named on a machine for a sum."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from shimstock.trade.sums.declare import Sum
from shimstock.workshop.books import book_of
from shimstock.workshop.for_sums.things import OF_JOINT
from shimstock.workshop.for_sums.train_thing import OF_TRAIN
from shimstock.workshop.models import Machine


def places_for(machine: Machine, sum_: Sum) -> list[tuple[str, str]]:
    """Joints, trains and figures that may hold something for a sum: mark or key, and name.

    A figure can be read for any sum; joints and trains only for one that looks for what they hold.
    """
    book = book_of(machine)
    words = {one.found for one in sum_.inputs if one.found}
    joints = book.joints if words.intersection(OF_JOINT) else {}
    trains = book.trains if words.intersection(OF_TRAIN) else {}
    return [*_named(joints), *_named(trains), *_named(book.measures)]


def _named(things: Mapping[str, Any]) -> list[tuple[str, str]]:
    return [(getattr(thing, "mark", None) or key, thing.name) for key, thing in things.items()]
