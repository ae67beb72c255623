"""Notes on a place, and the bags that hold what came off."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def note(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def bag(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/note/", note, name="note"),
    path("m/<slug:slug>/bag/", bag, name="bag"),
]
