"""Bags and shelves, and the short addresses on their labels."""

from __future__ import annotations

from django.http import HttpResponse, HttpResponseRedirect
from django.urls import NoReverseMatch, path, reverse
from django.utils.http import urlencode

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.places import address_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.workshop.labels import BAG, JOINT, PART, Labelled, labelled_of
from shimstock.workshop.looking import see
from shimstock.workshop.refused import NotFound
from shimstock.workshop.told import Shelf, shelves_of


def bags(asked: Asked, slug: str) -> HttpResponse:
    """Every bag in use by its shelf, or only those of one shelf or one number."""
    return bags_shown(asked, slug)


def bags_shown(asked: Asked, slug: str, wrong: Wrong | None = None) -> HttpResponse:
    """The page of the bags. wrong: with the form as it was typed."""
    seen = see(slug)
    shelf, number = asked.GET.get("shelf", ""), asked.GET.get("q", "").strip()
    shelves = shelves_of(seen.row)
    return page(
        asked,
        "bags.html",
        seen=seen,
        here="bags",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        shelves=_wanted(shelves, shelf, number),
        names=[each.name for each in shelves if each.name],
        shelf=shelf,
        number=number,
        typed=asked.POST or asked.GET,
    )


def label(asked: Asked, code: str) -> HttpResponse:
    """The short address that a label bears: on to the thing that it is stuck to."""
    labelled = labelled_of(code)
    if labelled is None:
        raise NotFound("label", code, [])
    return HttpResponseRedirect(_page_of(labelled))


def _wanted(shelves: list[Shelf], shelf: str, number: str) -> list[Shelf]:
    """Shelves with the bags that are asked for; all of them where nothing is asked for."""
    if shelf:
        return [each for each in shelves if each.name.casefold() == shelf.casefold()]
    if number:
        return [found for each in shelves if (found := each.only(number)).bags]
    return shelves


def _page_of(labelled: Labelled) -> str:
    """The page of a joint or part; of a bag the page of what it is of, where its photos stand.

    Raises NotFound for what no label can name.
    """
    try:
        return _address_of(labelled)
    except NoReverseMatch:
        raise NotFound("label", labelled.which, []) from None


def _address_of(labelled: Labelled) -> str:
    slug, which = labelled.machine, labelled.which
    if labelled.kind == JOINT:
        return reverse("joint", args=[slug, which])
    if labelled.kind == PART:
        return reverse("part", args=[slug, which])
    bags = reverse("bags", args=[slug])
    if labelled.kind != BAG:
        return f"{bags}?{urlencode({'shelf': which})}"
    about = see(slug).row.bags.filter(number=which, withdrawn=False).values_list("about", flat=True)
    place = address_of(about.first() or "", slug)
    return f"{place}#here" if place else f"{bags}?{urlencode({'q': which})}"


URLS = [
    path("m/<slug:slug>/bags/", bags, name="bags"),
    path("l/<path:code>/", label, name="label"),
]
