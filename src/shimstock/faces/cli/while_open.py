"""What is worth doing while it is open, and the stand-ins that it is weighed with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import typer

from shimstock.faces.cli.shown import Heading, Shown, Table
from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from collections.abc import Sequence

    from shimstock.trade.machine.book import Book
    from shimstock.trade.reach.way import Way
    from shimstock.trade.reach.while_open import WhileOpen

COLUMNS = ("while it is open", "now", "later", "even at", "")
LEGEND = (
    "now, later: minutes, by the book's times; even at: the chance of needing it later at which "
    "both cost the same."
)


@dataclass(frozen=True)
class Weighed:
    """The answer as plain values, and as it is shown."""

    data: dict[str, Any]
    shown: list[Shown]


def weighed(
    book: Book, way: Way, prices: Sequence[str], rate: float | None, touch_up: float | None
) -> Weighed:
    """Weigh doing a thing now against later.

    prices: JOINT=MONEY as typed. rate: money for an hour; touch_up: minutes of paint work; a
    stand-in where None. Raises NotFound for a joint, BadParameter for a price that is none.
    """
    from shimstock.trade.reach.while_open import RATE, TOUCH_UP, while_it_is_open

    price = dict(_price(book, each) for each in prices)
    hour = RATE if rate is None else rate
    paint = TOUCH_UP if touch_up is None else touch_up
    try:
        found = while_it_is_open(way.now, way.opens, seal_price=price, touch_up=paint, rate=hour)
    except ValueError:
        raise typer.BadParameter(
            "with nothing for the hour and nothing for the seals there is nothing to weigh; "
            "--rate 10 would do"
        ) from None
    said = ", ".join(
        (
            _said(f"an hour is worth {hour:g}", rate is None),
            _said(f"touching up paint {paint:g} min", touch_up is None),
            "seals as typed, all others nothing (stand-in)"
            if price
            else _said("seals cost nothing", True),
        )
    )
    data = {
        "weighed_with": {"rate": hour, "touch_up": paint, "seal_price": price},
        "while_open": [
            {"joint": each.joint, "minutes_now": each.minutes_now,
             "minutes_later": each.minutes_later, "chance": each.chance, "says": each.says}
            for each in found
        ],
    }  # fmt: skip
    return Weighed(data, _shown(book, found, said) if found else [])


def _shown(book: Book, found: Sequence[WhileOpen], said: str) -> list[Shown]:
    rows = [
        (called(book.joints, each.joint), f"{each.minutes_now:g}", f"{each.minutes_later:g}",
         f"{each.chance:.2f}", each.says)
        for each in found
    ]  # fmt: skip
    return [
        Heading(f"While it is open, if {said}"),
        Table(COLUMNS, rows, frozenset({"now", "later", "even at"})),
        LEGEND,
    ]


def _said(what: str, stand_in: bool) -> str:
    return f"{what} (stand-in)" if stand_in else what


def _price(book: Book, typed: str) -> tuple[str, float]:
    from shimstock.workshop.find import find_joint

    joint, _, money = typed.partition("=")
    try:
        price = float(money)
    except ValueError:
        price = -1.0
    if not 0 <= price < float("inf"):
        raise typer.BadParameter(f"{typed!r} is no price of a joint's seals; J54=16 would do")
    return find_joint(book, joint), price
