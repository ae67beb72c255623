"""Paper and data: the record, job cards, labels, readings as a table, the workshop as one file."""

from __future__ import annotations

from urllib.parse import urlsplit

from django.conf import settings
from django.http import FileResponse, HttpResponse, QueryDict, StreamingHttpResponse
from django.http.response import HttpResponseBase
from django.urls import path

from shimstock.faces.paper.labels import SHEETS, Wanted, labels_of, labels_pdf
from shimstock.faces.paper.square import base_typed
from shimstock.faces.paper.typeset import Paper
from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.wrong import NOT_DONE, Wrong, explained
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.at_joint import at_joint
from shimstock.workshop.find import find_joint, find_part
from shimstock.workshop.looking import Seen, see
from shimstock.workshop.refused import Refused
from shimstock.workshop.told import shelves_of

ONLY_HERE = frozenset({"localhost", "127.0.0.1", "::1"})
"""Names by which a computer finds itself, and no phone finds it."""


def papers(asked: Asked, slug: str) -> HttpResponse:
    """All that can be printed or taken along of a machine."""
    seen = see(slug)
    joints = seen.book.joints
    return page(
        asked,
        "papers.html",
        seen=seen,
        here="papers",
        paper=_paper(asked.GET),
        base=_base(asked),
        only_here=_only_here(_base(asked)),
        open_joints=[key for key in joints if key in seen.now.open_joints],
        other_joints=[key for key in joints if key not in seen.now.open_joints],
    )


def record(asked: Asked, slug: str) -> HttpResponse:
    """The record of a machine as a PDF."""
    from shimstock.faces.paper.record import record_pdf

    row = see(slug).row
    return _pdf(asked, record_pdf(row, paper=_paper(asked.GET)), f"{row.slug}.pdf")


def job_card(asked: Asked, slug: str, joint: str) -> HttpResponse:
    """The job card of a joint as a PDF."""
    from shimstock.faces.paper.job_card import job_card as card

    at = at_joint(see(slug), joint)
    pdf = card(at, base=_base(asked), paper=_paper(asked.GET))
    return _pdf(asked, pdf, f"{at.seen.row.slug}-{at.mark}.pdf")


def labels(asked: Asked, slug: str) -> HttpResponse:
    """Choose what labels to print."""
    return _labels_shown(asked, see(slug))


def labels_printed(asked: Asked, slug: str) -> HttpResponse:
    """The chosen labels as a PDF; or the choice again, with what was wrong."""
    seen = see(slug)
    try:
        pdf = labels_pdf(
            seen,
            labels_of(seen, _wanted(seen, asked.GET)),
            base=base_typed(asked.GET.get("address", "") or _base(asked)),
            sheet=_sheet(asked.GET),
            start=_start(asked.GET),
        )
    except (Refused, NotUnderstood) as error:
        return _labels_shown(asked, seen, explained(error))
    return _pdf(asked, pdf, f"{seen.row.slug}-labels.pdf")


def readings_csv(asked: Asked, slug: str) -> StreamingHttpResponse:
    """Every reading of a machine as a table."""
    from shimstock.faces.paper.readings_csv import readings_csv as table

    seen = see(slug)
    named = {"Content-Disposition": f'attachment; filename="{seen.row.slug}-readings.csv"'}
    return StreamingHttpResponse(table(seen), "text/csv; charset=utf-8", headers=named)


def archive(asked: Asked) -> HttpResponseBase:
    """What the whole workshop in one file is; or, of the form, that file."""
    from shimstock.workshop.archive.make import archive_open, name_today

    if asked.method != "POST":
        return _archive_shown(asked)
    try:
        packed = archive_open(settings.SHED)
    except Refused as error:
        return _archive_shown(asked, explained(error))
    return FileResponse(packed, as_attachment=True, filename=name_today(settings.SHED))


def _labels_shown(asked: Asked, seen: Seen, wrong: Wrong | None = None) -> HttpResponse:
    base = asked.GET.get("address", "") or _base(asked)
    shelves = shelves_of(seen.row)
    return page(
        asked,
        "labels.html",
        seen=seen,
        here="papers",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        typed=asked.GET,
        ticked=asked.GET.getlist("of"),
        joints_chosen=[key for key in asked.GET.getlist("joint") if key in seen.book.joints],
        parts_chosen=[key for key in asked.GET.getlist("part") if key in seen.book.parts],
        base=base,
        only_here=_only_here(base),
        sheets=SHEETS,
        sheet=_sheet(asked.GET),
        bags=sum(len(shelf.bags) for shelf in shelves),
        shelves=sum(bool(shelf.name) for shelf in shelves),
    )


def _archive_shown(asked: Asked, wrong: Wrong | None = None) -> HttpResponse:
    from shimstock.workshop.archive.make import LEFT_OUT, megabytes, size_now

    return page(
        asked,
        "archive.html",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        size=megabytes(size_now()),
        left_out=LEFT_OUT,
    )


def _wanted(seen: Seen, chosen: QueryDict) -> Wanted:
    """What was ticked. Raises NotFound for a joint or part that the book lacks."""
    ticked = set(chosen.getlist("of"))
    return Wanted(
        open_joints="open" in ticked,
        bags="bags" in ticked,
        shelves="shelves" in ticked,
        joints=tuple(find_joint(seen.book, key) for key in chosen.getlist("joint")),
        parts=tuple(find_part(seen.book, key) for key in chosen.getlist("part")),
    )


def _paper(chosen: QueryDict) -> Paper:
    return "letter" if chosen.get("paper") == "letter" else "a4"


def _sheet(chosen: QueryDict) -> str:
    wanted = chosen.get("sheet", "a4")
    return wanted if wanted in SHEETS else "a4"


def _start(chosen: QueryDict) -> int:
    """The first label that is left on a part-used sheet. Raises NotUnderstood."""
    typed = chosen.get("start", "").strip() or "1"
    if not typed.isdecimal() or len(typed) > 3:
        raise NotUnderstood(typed, "is no place of a label on a sheet", ("1", "9"))
    return int(typed)


def _base(asked: Asked) -> str:
    """Where phones find the shed; else where this browser found it."""
    return settings.SERVING.address or f"{asked.scheme}://{asked.get_host()}"


def _only_here(base: str) -> bool:
    """Whether no phone finds the shed under this address."""
    try:
        return urlsplit(base).hostname in ONLY_HERE
    except ValueError:
        return False


def _pdf(asked: Asked, pdf: bytes, name: str) -> HttpResponse:
    """A paper to look at, or one to keep where the address ends in ?keep=yes."""
    how = "attachment" if "keep" in asked.GET else "inline"
    headers = {
        "Content-Disposition": f'{how}; filename="{name}"',
        # A browser shows a paper with a part of its own, which the pages' policy would forbid.
        "Content-Security-Policy": "frame-ancestors 'none'",
    }
    return HttpResponse(pdf, "application/pdf", headers=headers)


URLS = [
    path("m/<slug:slug>/papers/", papers, name="papers"),
    path("m/<slug:slug>/record.pdf", record, name="record"),
    path("m/<slug:slug>/job/<str:joint>.pdf", job_card, name="job-card"),
    path("m/<slug:slug>/labels/", labels, name="labels"),
    path("m/<slug:slug>/labels.pdf", labels_printed, name="labels-pdf"),
    path("m/<slug:slug>/readings.csv", readings_csv, name="readings-csv"),
    path("archive/", archive, name="archive"),
]
