"""Taking one reading: a grid shaped like the measurement, and at once what it means."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def reading(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def understand(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/reading/<str:figure>/", reading, name="reading"),
    path("m/<slug:slug>/reading/<str:figure>/understood/", understand, name="understand"),
]
