"""A request as the pages know it: with the person who is there."""

from __future__ import annotations

from django.http import HttpRequest
from django_htmx.middleware import HtmxDetails


class Asked(HttpRequest):
    """A request for a page.

    who: the person's name, as the diary will hold it; "" for a page that is open to all.
    htmx: whether it is to change a part of a page that is there already.
    """

    who: str
    htmx: HtmxDetails
