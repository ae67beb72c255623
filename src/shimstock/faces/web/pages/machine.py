"""One machine: its parts and joints as a drawing to tap, and finding things by name."""

from __future__ import annotations

from dataclasses import dataclass

from django.core.files.uploadedfile import UploadedFile
from django.http import HttpResponse
from django.urls import path, reverse
from django.utils.text import slugify

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.drawn import drawn
from shimstock.faces.web.faults import faults
from shimstock.faces.web.found import MOST_FOUND, found_on
from shimstock.faces.web.pages.chains import chains_of
from shimstock.faces.web.pages.photos import last_photo
from shimstock.faces.web.tonight import Tonight
from shimstock.faces.web.wrong import NOT_DONE, Wrong, explained
from shimstock.trade.machine.starters import starter_names, starter_text
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import acts
from shimstock.workshop.books import book_from
from shimstock.workshop.looking import DEFERS, Seen, see
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.standing import where_was_i

AN_EVENING = 20
"""Entries of the diary that are looked at for what was done last."""
MOST_SERIALS = 3


def machine(asked: Asked, slug: str) -> HttpResponse:
    """The machine as it stands, and its drawing."""
    seen = see(slug)
    return page(
        asked,
        "machine.html",
        here="machine",
        seen=seen,
        drawing=lambda: drawn(seen.now),
        stands=Tonight(seen),
        where=_where(seen),
        photo=last_photo(seen.row),
        ways=chains_of(seen),
        defers=DEFERS,
    )


def _where(seen: Seen) -> str:
    written = seen.row.diary.defer("before", "after", "sent").order_by("-pk")
    entries = list(written[:AN_EVENING])
    return where_was_i(seen, entries[0] if entries else None, entries[1:])


def find(asked: Asked, slug: str) -> HttpResponse:
    """Everything of a machine that bears the words asked for."""
    seen, words = see(slug), str(asked.GET.get("q", ""))
    found = found_on(seen, words)
    return page(
        asked,
        "found.html" if asked.htmx else "find.html",
        seen=seen,
        words=words,
        found=found[:MOST_FOUND],
        more=max(0, len(found) - MOST_FOUND),
    )


@dataclass(frozen=True)
class BookTyped:
    """A book as it was sent. name: of its file, or of a starter. own: it is no starter's."""

    text: str
    name: str
    own: bool = True


def new_machine(asked: Asked) -> HttpResponse:
    """Book a machine in, made to a starter or to a book of one's own."""
    if asked.method != "POST":
        return _new_shown(asked)
    slug = _slug(asked)
    try:
        book = _book_typed(asked, slug)
    except NotUnderstood as error:
        return _new_shown(asked, explained(error))
    return do_and_show(
        asked,
        lambda: _booked_in(asked, slug, book),
        then=reverse("machine", args=[slug]) if slug else reverse("shed"),
        again=lambda wrong: _new_shown(asked, wrong, book),
    )


def _booked_in(asked: Asked, slug: str, book: BookTyped) -> DiaryEntry:
    return acts.add_machine(
        slug=slug,
        name=str(asked.POST.get("name", "")),
        book_text=book.text,
        book_name=book.name,
        serials=_serials(asked),
        notes=str(asked.POST.get("notes", "")),
        who=asked.who,
    )


def _new_shown(
    asked: Asked, wrong: Wrong | None = None, book: BookTyped | None = None
) -> HttpResponse:
    own = book if book and book.own else None
    found = faults(own.text, own.name) if own else []
    return page(
        asked,
        "new_machine.html",
        status=NOT_DONE if wrong else 200,
        wrong=None if found else wrong,
        faults=found,
        starters=_starters(),
        typed=asked.POST,
        text=own.text if own else "",
        serials=[
            (number, asked.POST.get(f"where{number}", ""), asked.POST.get(f"serial{number}", ""))
            for number in range(1, MOST_SERIALS + 1)
        ],
    )


def _starters() -> list[tuple[str, str]]:
    """Starters by name and title; last those that know no parts and so show nothing to tap."""
    books = {name: book_from(starter_text(name), name) for name in starter_names()}
    return sorted(
        ((name, book.title) for name, book in books.items()),
        key=lambda each: not books[each[0]].parts,
    )


def _slug(asked: Asked) -> str:
    """The short name as it was typed; where none was, made of the name."""
    return str(asked.POST.get("slug", "")).strip() or slugify(str(asked.POST.get("name", "")))[:60]


def _book_typed(asked: Asked, slug: str) -> BookTyped:
    """The book's text and name: of a file, of what was typed, else of a starter.

    Raises NotUnderstood for a file that is no text.
    """
    if isinstance(file := asked.FILES.get("file"), UploadedFile):
        return BookTyped(_text_of(file), str(file.name))
    if text := _text(str(asked.POST.get("text", ""))).strip("\n"):
        return BookTyped(f"{text}\n", f"{slug or 'book'}.yaml")
    starter = str(asked.POST.get("starter", ""))
    known = starter in starter_names()
    return BookTyped(starter_text(starter) if known else "", starter if known else "", own=False)


def _text_of(file: UploadedFile) -> str:
    try:
        text = _text(file.read().decode())
    except UnicodeDecodeError:
        text = "\0"
    if any(letter < " " and letter not in "\t\n" for letter in text):
        raise NotUnderstood(str(file.name), "is no text", ("a book: text in UTF-8, as YAML",))
    return text


def _text(sent: str) -> str:
    """Text as it is kept: browsers send the ends of lines in another way."""
    return sent.replace("\r\n", "\n")


def _serials(asked: Asked) -> dict[str, str]:
    pairs = [
        (
            str(asked.POST.get(f"where{n}", "")).strip(),
            str(asked.POST.get(f"serial{n}", "")).strip(),
        )
        for n in range(1, MOST_SERIALS + 1)
    ]
    return {where: number for where, number in pairs if where and number}


URLS = [
    path("new/", new_machine, name="new-machine"),
    path("m/<slug:slug>/", machine, name="machine"),
    path("m/<slug:slug>/find/", find, name="find"),
]
