"""Photos: sent from the phone, seen at their place."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def photos(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def photo(asked: Asked, pk: str, size: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/photos/", photos, name="photos"),
    path("photos/<int:pk>/<str:size>/", photo, name="photo"),
]
