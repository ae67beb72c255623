"""The cheapest way in to parts and joints, and what is worth doing on the way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.urls import path
from django.utils.http import urlencode

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.wrong import NOT_DONE, explained
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.looking import DEFERS, Seen, see
from shimstock.workshop.place_typed import place_called, place_of, target_typed

if TYPE_CHECKING:
    from django.http.request import QueryDict

    from shimstock.trade.reach.way import Way
    from shimstock.workshop.weighing import Weighed


def reach(asked: Asked, slug: str) -> HttpResponse:
    """The way in to what is asked for; and what else one may ask for."""
    seen = see(slug)
    wanted = [each.strip() for each in asked.GET.getlist("to") if each.strip()]
    shown: dict[str, object] = {}
    wrong = None
    try:
        shown = _way(seen, wanted, asked.GET) if wanted else {}
    except Exception as error:
        if (wrong := explained(error)) is None:
            raise
        shown = {"like": _like(seen, wanted)}
    return page(
        asked,
        "reach.html",
        seen=seen,
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        wanted=wanted,
        to_see=urlencode([("to", each) for each in wanted]),
        typed=asked.GET,
        defers=DEFERS,
        **shown,
    )


def _way(seen: Seen, wanted: list[str], typed: QueryDict) -> dict[str, object]:
    from shimstock.trade.reach.way import way_in
    from shimstock.workshop.ways import how_sure, way_steps

    targets = [target_typed(seen.book, each) for each in wanted]
    way = way_in(seen.now, targets, take_off="off" in typed)
    return {
        "way": way,
        "steps": way_steps(seen, way),
        "names": [target.name(seen.book) for target in way.targets],
        "how_sure": how_sure(way),
        "weighed": _weighed(seen, way, typed),
    }


def _like(seen: Seen, wanted: list[str]) -> list[tuple[str, str]]:
    """What may be meant by names that the book does not know, each with what to ask for instead."""
    from shimstock.workshop.ways import known_and_not, targets_like

    known, unknown = known_and_not(seen.book, wanted)
    like = [each for typed in unknown for each in targets_like(seen.book, typed)]
    return [
        (place_called(seen.book, place), urlencode([("to", to) for to in (*known, place)]))
        for place in (place_of(each) for each in like)
    ]


def _weighed(seen: Seen, way: Way, typed: QueryDict) -> Weighed:
    from shimstock.workshop.weighing import prices_typed, weigh

    prices = prices_typed(seen.book, typed.get("seals", "").replace(",", " ").split())
    rate, paint = _number(typed.get("rate", "")), _number(typed.get("touch_up", ""))
    try:
        return weigh(way, prices, rate, paint)
    except ValueError:
        wrong = "for the hour and nothing for the seals leave nothing to weigh"
        raise NotUnderstood(typed.get("rate", ""), wrong, ("10",)) from None


def _number(typed: str) -> float | None:
    """Money or minutes; None where nothing was typed. Raises NotUnderstood."""
    text = typed.strip()
    try:
        number = float(text or 0)
    except ValueError:
        number = -1.0
    if not 0 <= number < float("inf"):
        raise NotUnderstood(text, "is no amount", ("10",))
    return number if text else None


URLS = [
    path("m/<slug:slug>/reach/", reach, name="reach"),
]
