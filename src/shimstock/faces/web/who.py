"""Who is there: the person signed in on this device, or whoever started the server."""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from django.conf import settings
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import Resolver404, resolve, reverse
from django.utils.http import urlencode

from shimstock.faces.web.asked import Asked

OPEN_TO_ALL = frozenset({"sign-in", "join"})
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
            back = urlencode({"then": request.get_full_path()})
            return HttpResponseRedirect(f"{reverse('sign-in')}?{back}")
        return self.get_response(request)


def _open_to_all(path: str) -> bool:
    try:
        return resolve(path).url_name in OPEN_TO_ALL
    except Resolver404:
        return False


def _signed_in(request: HttpRequest) -> str:
    """The name of the person on this device; "" for nobody."""
    return str(request.session.get("who", ""))
