"""One machine: its parts and joints as a drawing to tap, and finding things by name."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def machine(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def find(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def new_machine(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/", machine, name="machine"),
    path("m/<slug:slug>/find/", find, name="find"),
    path("new/", new_machine, name="new-machine"),
]
