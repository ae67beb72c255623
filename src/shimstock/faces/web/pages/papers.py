"""Paper and data: the record, job cards, readings as a table, the whole workshop in one file."""

from django.http import HttpResponse
from django.urls import path

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked


def papers(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def record(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def job_card(asked: Asked, slug: str, joint: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def readings_csv(asked: Asked, slug: str) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


def archive(asked: Asked) -> HttpResponse:
    """To be made."""
    return page(asked, "wrong_page.html", title="To be made")


URLS = [
    path("m/<slug:slug>/papers/", papers, name="papers"),
    path("m/<slug:slug>/record.pdf", record, name="record"),
    path("m/<slug:slug>/job/<str:joint>.pdf", job_card, name="job-card"),
    path("m/<slug:slug>/readings.csv", readings_csv, name="readings-csv"),
    path("archive/", archive, name="archive"),
]
