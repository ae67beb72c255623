"""What is worth doing while it is open, and the figures that it is weighed with."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.trade.reach.while_open import RATE, TOUCH_UP, while_it_is_open

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.trade.reach.way import Way
    from shimstock.trade.reach.while_open import WhileOpen


@dataclass(frozen=True)
class Weighed:
    """Joints worth a thought, the clearest case first, and in words what they are weighed with."""

    found: tuple[WhileOpen, ...]
    rate: float
    touch_up: float
    seal_price: Mapping[str, float]
    said: str

    @property
    def data(self) -> dict[str, Any]:
        """The answer as plain values."""
        return {
            "weighed_with": {
                "rate": self.rate,
                "touch_up": self.touch_up,
                "seal_price": dict(self.seal_price),
            },
            "while_open": [
                {"joint": each.joint, "minutes_now": each.minutes_now,
                 "minutes_later": each.minutes_later, "chance": each.chance, "says": each.says}
                for each in self.found
            ],
        }  # fmt: skip


def weigh(
    way: Way, seal_price: Mapping[str, float], rate: float | None, touch_up: float | None
) -> Weighed:
    """Weigh doing a thing now against later.

    seal_price: money by joint. rate: money for an hour; touch_up: minutes of paint work; a stand-in
    where None. Raises ValueError where there is nothing to weigh.
    """
    hour = RATE if rate is None else rate
    paint = TOUCH_UP if touch_up is None else touch_up
    found = while_it_is_open(way.now, way.opens, seal_price=seal_price, touch_up=paint, rate=hour)
    said = (
        _said(f"an hour is worth {hour:g}", rate is None),
        _said(f"touching up paint {paint:g} min", touch_up is None),
        "seals as typed, all others nothing (stand-in)"
        if seal_price
        else _said("seals cost nothing", True),
    )
    return Weighed(found, hour, paint, seal_price, ", ".join(said))


def prices_typed(book: Book, typed: Iterable[str]) -> dict[str, float]:
    """What the seals of joints cost, from texts such as J54=16.

    Raises NotFound for a joint, NotUnderstood for a price that is none.
    """
    return dict(_price(book, each) for each in typed)


def _price(book: Book, typed: str) -> tuple[str, float]:
    from shimstock.workshop.find import find_joint

    joint, _, money = typed.partition("=")
    try:
        price = float(money)
    except ValueError:
        price = -1.0
    if not 0 <= price < float("inf"):
        raise NotUnderstood(typed, "is no price of a joint's seals", ("J54=16",))
    return find_joint(book, joint), price


def _said(what: str, stand_in: bool) -> str:
    return f"{what} (stand-in)" if stand_in else what
