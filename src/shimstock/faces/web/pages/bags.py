"""Bags and shelves, and the labels for them."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def bags(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def labels(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def label(asked: Asked, code: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/bags/", bags, name="bags"),
    path("m/<slug:slug>/labels/", labels, name="labels"),
    path("l/<str:code>/", label, name="label"),
]
