"""Who is there: the person signed in on this device, or whoever started the server."""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import Resolver404, resolve, reverse
from django.utils.http import url_has_allowed_host_and_scheme, urlencode
from django_htmx.http import HttpResponseClientRedirect

from shimstock.faces.web.asked import Asked
from shimstock.workshop.people import who_is_on

OPEN_TO_ALL = frozenset({"sign-in", "join", "join-code"})
"""Names of the addresses that need nobody signed in."""


class WhoIsThere:
    """Puts the person's name on each request, and asks those who are not known to sign in."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer, or send to the page where people sign in."""
        asked = cast(Asked, request)
        asked.who = _signed_in(request) if settings.SERVING.sign_in else settings.SERVING.who
        if not asked.who and not _open_to_all(request.path_info):
            return _sign_in_first(asked)
        return self.get_response(request)


def our_own(asked: HttpRequest, address: str) -> str:
    """An address to go on to, where it is one of this shed's; the shed's first page else."""
    hosts = {asked.get_host()}
    if address and url_has_allowed_host_and_scheme(address, hosts, asked.is_secure()):
        return address
    return reverse("shed")


def _sign_in_first(asked: Asked) -> HttpResponse:
    """To the page where people sign in and from there back; a script is only told."""
    sign_in = f"{reverse('sign-in')}?{urlencode({'then': _back_to(asked)})}"
    if asked.htmx:
        return HttpResponseClientRedirect(sign_in)
    if "text/html" not in asked.headers.get("Accept", "text/html"):
        return HttpResponse("Sign in first.", status=401, content_type="text/plain")
    return HttpResponseRedirect(sign_in)


def _back_to(asked: Asked) -> str:
    """The page that is wanted; for what a page sent, that page."""
    if asked.htmx:
        return asked.htmx.current_url_abs_path or reverse("shed")
    if asked.method == "GET":
        return asked.get_full_path()
    return our_own(asked, asked.headers.get("Referer", ""))


def _open_to_all(path: str) -> bool:
    try:
        return resolve(path).url_name in OPEN_TO_ALL
    except Resolver404:
        return False


def _signed_in(request: HttpRequest) -> str:
    """The name of the person on this device; "" for nobody."""
    key = request.session.session_key
    return who_is_on(key) if key else ""
