"""The diary: what was done, by whom, and undoing it."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def diary(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def undo(asked: Asked, slug: str, entry: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/diary/", diary, name="diary"),
    path("m/<slug:slug>/diary/<int:entry>/undo/", undo, name="undo"),
]
