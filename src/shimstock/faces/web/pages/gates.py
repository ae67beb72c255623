"""Gates: what still stands before paint, first start, road and handing over."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def gates(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def gate(asked: Asked, slug: str, gate: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/gates/", gates, name="gates"),
    path("m/<slug:slug>/gates/<str:gate>/", gate, name="gate"),
]
