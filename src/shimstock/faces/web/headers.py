"""What goes with every page: nothing is fetched from outside, and text travels small."""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.middleware.gzip import GZipMiddleware

POLICY = (
    "default-src 'self'; img-src 'self' blob: data:; object-src 'none'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'"
)
"""Which files a page may load, for the browser to hold it to."""

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


class SmallerText(GZipMiddleware):
    """Packs text; pictures and papers are packed already."""

    def process_response(
        self, request: HttpRequest, response: HttpResponseBase
    ) -> HttpResponseBase:
        """Pack what is text."""
        if not response.headers.get("Content-Type", "").startswith(TEXT):
            return response
        return super().process_response(request, response)
