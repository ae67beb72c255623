"""The shed: every machine, where it stands, its next thing, what waits and what is unsafe."""

from __future__ import annotations

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.found import MOST_FOUND, found_on
from shimstock.faces.web.tonight import Tonight
from shimstock.workshop.looking import see_all

MANY = 6
"""More machines than these are shown in short, each to be unfolded."""


def shed(asked: Asked) -> HttpResponse:
    """All machines."""
    machines = [Tonight(seen) for seen in see_all()]
    return page(
        asked,
        "shed.html",
        here="shed",
        machines=machines,
        many=len(machines) > MANY,
        latest=max((each.seen.latest for each in machines), default=0),
    )


def find(asked: Asked) -> HttpResponse:
    """Everything in the shed that bears the words asked for."""
    words = str(asked.GET.get("q", ""))
    found = [each for seen in see_all() for each in found_on(seen, words)]
    found.sort(key=lambda each: each.thing.kind != "machine")
    return page(
        asked,
        "found.html" if asked.htmx else "find.html",
        words=words,
        found=found[:MOST_FOUND],
        more=max(0, len(found) - MOST_FOUND),
        which=True,
    )


URLS = [
    path("", shed, name="shed"),
    path("find/", find, name="find-all"),
]
