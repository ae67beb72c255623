"""Trains of play, and shim packs."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def chain(asked: Asked, slug: str, train: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def shims(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/chain/<str:train>/", chain, name="chain"),
    path("m/<slug:slug>/shims/<str:figure>/", shims, name="shims"),
]
