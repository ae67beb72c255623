"""One part: its pieces and how they stand, what may become of them, what leads to it."""

from __future__ import annotations

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.pages.photos import photos_of
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.workshop import acts
from shimstock.workshop.at_part import at_part
from shimstock.workshop.looking import DEFERS, see
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.places import piece_place
from shimstock.workshop.told import bags_of, notes_on


def part(asked: Asked, slug: str, part: str) -> HttpResponse:
    """The part; or, of a form, a piece of it that stands otherwise now."""
    if asked.method != "POST":
        return _shown(asked, slug, part)
    key = at_part(see(slug), part).key
    return do_and_show(
        asked,
        lambda: _moved(asked, slug, key),
        then=address_of(piece_place(key, str(asked.POST.get("piece", ""))), slug),
        again=lambda wrong: _shown(asked, slug, part, wrong),
    )


def _moved(asked: Asked, slug: str, key: str) -> DiaryEntry:
    def typed(name: str) -> str:
        return str(asked.POST.get(name, ""))

    return acts.move_piece(
        machine=slug,
        part=key,
        piece=typed("piece"),
        to=typed("to"),
        maker=typed("maker"),
        size=typed("size"),
        note=typed("note"),
        proved_pair="proved_pair" in asked.POST if "set" in asked.POST else None,
        who=asked.who,
    )


def _shown(asked: Asked, slug: str, part: str, wrong: Wrong | None = None) -> HttpResponse:
    seen = see(slug)
    at = at_part(seen, part)
    which = str(asked.POST.get("piece", asked.GET.get("piece", "")))
    piece = next((each for each in at.pieces if each.name == which), at.pieces[0])
    place = piece_place(at.key, piece.name)
    return page(
        asked,
        "part.html",
        seen=seen,
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        at=at,
        piece=piece,
        typed=asked.POST if wrong else None,
        defers=DEFERS,
        about=place,
        machine=seen.row,
        notes=notes_on(seen.row, place),
        bags=bags_of(seen.row, place),
        photos=photos_of(seen.row, place),
    )


URLS = [
    path("m/<slug:slug>/part/<str:part>/", part, name="part"),
]
