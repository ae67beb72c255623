"""One joint: opened, made ready, closed, checked; what it takes and what it lets one reach."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def joint(asked: Asked, slug: str, joint: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/joint/<str:joint>/", joint, name="joint"),
]
