"""What is worth doing while it is open, as lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from shimstock.faces.cli.shown import Heading, Shown, Table
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.looking import called

if TYPE_CHECKING:
    from collections.abc import Sequence

    from shimstock.trade.machine.book import Book
    from shimstock.trade.reach.way import Way
    from shimstock.workshop.weighing import Weighed

COLUMNS = ("while it is open", "now", "later", "even at", "")
LEGEND = (
    "now, later: minutes, by the book's times; even at: the chance of needing it later at which "
    "both cost the same."
)


def weighed(
    book: Book, way: Way, prices: Sequence[str], rate: float | None, touch_up: float | None
) -> Weighed:
    """Weigh doing a thing now against later.

    prices: JOINT=MONEY as typed. rate: money for an hour; touch_up: minutes of paint work; a
    stand-in where None. Raises NotFound for a joint, BadParameter for a price that is none.
    """
    from shimstock.workshop.weighing import prices_typed, weigh

    try:
        price = prices_typed(book, prices)
    except NotUnderstood as wrong:
        would_do = " or ".join(wrong.would_do)
        raise typer.BadParameter(f"{wrong.typed!r} {wrong.wrong}; {would_do} would do") from None
    try:
        return weigh(way, price, rate, touch_up)
    except ValueError:
        raise typer.BadParameter(
            "with nothing for the hour and nothing for the seals there is nothing to weigh; "
            "--rate 10 would do"
        ) from None


def weighed_shown(book: Book, by: Weighed) -> list[Shown]:
    """The answer as a table; nothing where nothing is worth a thought."""
    rows = [
        (called(book.joints, each.joint), f"{each.minutes_now:g}", f"{each.minutes_later:g}",
         f"{each.chance:.2f}", each.says)
        for each in by.found
    ]  # fmt: skip
    if not rows:
        return []
    return [
        Heading(f"While it is open, if {by.said}"),
        Table(COLUMNS, rows, frozenset({"now", "later", "even at"})),
        LEGEND,
    ]
