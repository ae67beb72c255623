"""Who works here: signing in and out, joining by a code, and the devices that are signed in."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def sign_in(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def sign_out(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def join(asked: Asked, code: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def people(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("sign-in/", sign_in, name="sign-in"),
    path("sign-out/", sign_out, name="sign-out"),
    path("join/<code>/", join, name="join"),
    path("people/", people, name="people"),
]
