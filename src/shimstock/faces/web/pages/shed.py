"""The shed: every machine, where it stands, its next thing, what waits and what is unsafe."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.workshop.looking import see_all


def shed(asked: Asked) -> HttpResponse:
    """All machines."""
    machines = see_all()
    latest = max((seen.latest for seen in machines), default=0)
    return page(asked, "shed.html", here="shed", machines=machines, latest=latest)


URLS = [path("", shed, name="shed")]
