"""Taking one reading: a grid shaped like the measurement, and at once what it means."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.urls import path, reverse
from django.utils.http import urlencode

from shimstock.faces.web.act import do_and_show, page, typed_at
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.scale import scales
from shimstock.faces.web.whole_number import whole_number
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import acts
from shimstock.workshop.at_figure import AtFigure, at_figure
from shimstock.workshop.looking import DEFERS, see
from shimstock.workshop.reading_typed import Typed, instrument_typed, typed_understood

if TYPE_CHECKING:
    from shimstock.workshop.models import DiaryEntry


@dataclass(frozen=True)
class Box:
    """A box to type a number into, and what was understood of what stands in it."""

    number: int
    label: str
    typed: Typed
    last: bool


@dataclass(frozen=True)
class Boxes:
    """The boxes that belong together: one direction across a bore, or all places of a list."""

    across: str
    boxes: tuple[Box, ...]


def reading(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """The figure; or, of a form, a reading to store or a verdict to accept."""
    if asked.method != "POST" or "take" in asked.POST:
        return _shown(asked, slug, figure)
    at = _asked_for(asked, slug, figure)
    return do_and_show(
        asked,
        lambda: _accept(asked, at) if "accept" in asked.POST else _take(asked, at),
        then=_address(at, _search(asked)),
        again=lambda wrong: _shown(asked, slug, figure, wrong),
    )


def understand(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """What is understood of the boxes as they stand; nothing is stored."""
    at = _asked_for(asked, slug, figure)
    boxes = _in_groups(at, _understood(asked, at, _texts(asked, at)))
    return page(asked, "understood.html", seen=at.seen, at=at, groups=boxes, apart=True)


def _asked_for(asked: Asked, slug: str, figure: str) -> AtFigure:
    said = asked.POST if asked.method == "POST" else asked.GET
    return at_figure(see(slug), figure, said.get("piece", ""), said.get("stage", ""))


def _shown(asked: Asked, slug: str, figure: str, wrong: Wrong | None = None) -> HttpResponse:
    at = _asked_for(asked, slug, figure)
    return page(
        asked,
        "reading.html",
        seen=at.seen,
        status=NOT_DONE if wrong else 200,
        here="readings",
        wrong=wrong,
        at=at,
        groups=_in_groups(at, _understood(asked, at, _texts(asked, at))),
        scales=scales(at),
        typed=asked.POST,
        means_first=at.stage in at.verdicts and asked.method != "POST",
        address=_address(at, _search(asked)),
        search=_search(asked),
        defers=DEFERS,
    )


def _take(asked: Asked, at: AtFigure) -> DiaryEntry:
    typed = asked.POST
    took = acts.take_reading(
        machine=at.seen.row,
        figure=at.key,
        piece=at.piece,
        stage=at.stage,
        at=typed_at(asked),
        typed=_sent(at, _texts(asked, at)),
        instrument=instrument_typed(
            at.seen.book, at.key, typed.get("with", ""), typed.get("good_to", "")
        ),
        each=_how_many(typed.get("each", "")),
        meant="meant" in typed,
        who=asked.who,
    )
    return took.entry


def _accept(asked: Asked, at: AtFigure) -> DiaryEntry:
    return acts.accept_verdict(
        machine=at.seen.row,
        figure=at.key,
        piece=asked.POST.get("of", at.piece),
        reason=asked.POST.get("reason", ""),
        who=asked.who,
    )


def _texts(asked: Asked, at: AtFigure) -> list[str]:
    """What stands in the boxes, one text for each; a value that was taken up stands in its box."""
    texts = [*asked.POST.getlist("value"), *[""] * len(at.boxes)]
    number, _, value = asked.POST.get("take", "").partition(" ")
    if number.isdecimal() and int(number) < len(at.boxes):
        texts[int(number)] = value
    return texts[: max(len(at.boxes), len(asked.POST.getlist("value")))]


def _sent(at: AtFigure, texts: Sequence[str]) -> list[str]:
    """The texts to store: of a figure that is read as often as one likes, only those filled in."""
    return [text for text in texts if text.strip()] or [""] if at.repeats else list(texts)


def _understood(asked: Asked, at: AtFigure, texts: list[str]) -> tuple[Typed, ...]:
    return typed_understood(at.seen.book, at.key, texts, at.others, meant="meant" in asked.POST)


def _in_groups(at: AtFigure, typed: Sequence[Typed]) -> list[Boxes]:
    """The boxes in the shape of the measurement: direction by direction down the bore."""
    grid = at.entry.at if at.entry.at and at.entry.at.depths else None
    labels = [*at.boxes, *[""] * len(typed)]
    boxes = [
        Box(n, grid.depths[n % len(grid.depths)] if grid else labels[n], each, n + 1 == len(typed))
        for n, each in enumerate(typed)
    ]
    if grid is None:
        return [Boxes("", tuple(boxes))]
    deep = len(grid.depths)
    return [
        Boxes(across, tuple(boxes[n * deep : (n + 1) * deep]))
        for n, across in enumerate(grid.across)
    ]


def _how_many(typed: str) -> int:
    """Of how many readings each number is the mean. Raises NotUnderstood."""
    text = typed.strip() or "1"
    if not text.isdecimal():
        raise NotUnderstood(typed, "is no count of readings", ("3",))
    return int(text)


def _search(asked: Asked) -> int | None:
    """The number of the search for a fault from which one came, and goes back to."""
    return whole_number(asked.GET.get("search", ""))


def _address(at: AtFigure, search: int | None) -> str:
    asked = {"piece": at.piece, "stage": str(at.stage), "search": str(search or "")}
    said = urlencode({name: value for name, value in asked.items() if value})
    return f"{reverse('reading', args=[at.seen.row.slug, at.key])}?{said}"


URLS = [
    path("m/<slug:slug>/reading/<str:figure>/", reading, name="reading"),
    path("m/<slug:slug>/reading/<str:figure>/understood/", understand, name="understand"),
]
