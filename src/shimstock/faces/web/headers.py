"""What goes with every page: nothing is fetched from outside, and text travels small."""

from collections.abc import Callable
from typing import cast

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.middleware.gzip import GZipMiddleware

from shimstock.faces.web.asked import Asked
from shimstock.faces.web.whole_number import whole_number

POLICY = (
    "default-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'"
)
"""Which files a page may load, for the browser to hold it to."""

MOST, MOST_OF_A_STRANGER = 400 * 2**20, 2**20
"""Bytes of a form with its photos; of one by somebody who has not signed in."""

TEXT = ("text/", "application/json", "application/javascript", "image/svg")


class OnlyFromTheShed:
    """Tells the browser to load only what the shed serves, and to ask anew for each page."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer, with the headers."""
        response = self.get_response(request)
        response.headers.setdefault("Content-Security-Policy", POLICY)
        if not response.has_header("Cache-Control"):
            response.headers["Cache-Control"] = "private, no-cache"
        return response


class NotTooLarge:
    """Turns away what is larger than anybody sends, before it is read; stands after WhoIsThere."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer; 413 where too much is on its way."""
        said = whole_number(request.META.get("CONTENT_LENGTH") or "0")
        known = cast(Asked, request).who
        if said is None or said > (MOST if known else MOST_OF_A_STRANGER):
            return HttpResponse("That is more than the shed takes at once.", status=413)
        return self.get_response(request)


class SmallerText(GZipMiddleware):
    """Packs text; pictures and papers are packed already."""

    def process_response(
        self, request: HttpRequest, response: HttpResponseBase
    ) -> HttpResponseBase:
        """Pack what is text."""
        if not response.headers.get("Content-Type", "").startswith(TEXT):
            return response
        return super().process_response(request, response)
