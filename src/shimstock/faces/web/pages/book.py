"""The machine's book: its figures seen and corrected, a book file taken in and given out."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def book(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def figure(asked: Asked, slug: str, figure: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def book_file(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/book/", book, name="book"),
    path("m/<slug:slug>/book/<str:figure>/", figure, name="figure"),
    path("m/<slug:slug>/book-file/", book_file, name="book-file"),
]
