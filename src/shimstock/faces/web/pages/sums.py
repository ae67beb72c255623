"""The trade's sums as forms, each with its working."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def sums(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def sum(asked: Asked, name: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("sums/", sums, name="sums"),
    path("sums/<slug:name>/", sum, name="sum"),
]
