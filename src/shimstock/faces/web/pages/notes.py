"""Notes on a place, and the bags that hold what came off."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.urls import path, reverse
from django.views.decorators.http import require_POST

from shimstock.faces.web.act import do_and_show, page, typed_at
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.pages.bags import bags_shown
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.reach.target import UnknownName
from shimstock.workshop import acts
from shimstock.workshop.looking import see
from shimstock.workshop.place_typed import place_typed
from shimstock.workshop.places import MACHINE

if TYPE_CHECKING:
    from shimstock.workshop.models import DiaryEntry


@require_POST
def note(asked: Asked, slug: str) -> HttpResponse:
    """Keep a note; then the page of what it is about."""
    about, text = asked.POST.get("about", ""), asked.POST.get("text", "")

    def again(wrong: Wrong) -> HttpResponse:
        shown = {"wrong": wrong, "about": about, "text": text}
        return page(asked, "notes.html", seen=see(slug), status=NOT_DONE, **shown)

    return do_and_show(
        asked,
        lambda: acts.write_note(
            machine=slug, about=about, text=text, who=asked.who, at=typed_at(asked)
        ),
        then=_page_of(about, slug, "#notes"),
        again=again,
    )


@require_POST
def bag(asked: Asked, slug: str) -> HttpResponse:
    """Put something into a bag, move the bag, or empty it; then the page of what it is about."""
    then = asked.POST.get("then", "")
    return do_and_show(
        asked,
        lambda: _bag(asked, slug),
        then=_page_of(then, slug, "#bag") if then else reverse("bags", args=[slug]),
        again=lambda wrong: bags_shown(asked, slug, wrong),
    )


def _bag(asked: Asked, slug: str) -> DiaryEntry:
    typed = asked.POST
    number = typed.get("number", "")
    if typed.get("do") == "empty":
        return acts.empty_bag(machine=slug, number=number, who=asked.who)
    return acts.put_in_bag(
        machine=slug,
        number=number,
        about=typed.get("about", ""),
        holds=typed.get("holds"),
        shelf=typed.get("shelf"),
        who=asked.who,
    )


def _page_of(about: str, slug: str, where: str) -> str:
    """The page of a joint or part, else of the machine, at the place on it that tells of it."""
    try:
        place = place_typed(see(slug).book, about)
    except UnknownName:  # the act says so, and keeps what was typed
        place = MACHINE
    return (
        reverse("machine", args=[slug]) if place == MACHINE else address_of(place, slug)
    ) + where


URLS = [
    path("m/<slug:slug>/note/", note, name="note"),
    path("m/<slug:slug>/bag/", bag, name="bag"),
]
