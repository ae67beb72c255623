"""The search for a fault: what shows, how likely each cause is, and the check to do next."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from django.core.files.uploadedfile import UploadedFile
from django.http import HttpResponse, HttpResponseRedirect
from django.http.request import QueryDict
from django.urls import path, reverse

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.fault_shown import Shown, counts_shown
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.faults.learned import BOOK_IS_WORTH
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import acts
from shimstock.workshop.counts_file import LONGEST
from shimstock.workshop.fault_search.again import look_again
from shimstock.workshop.fault_search.counts import export_counts, imported
from shimstock.workshop.fault_search.pick import found_by_word
from shimstock.workshop.fault_search.trail import trail
from shimstock.workshop.fault_search.words import (
    CAUSE,
    SIGN,
    find_cause,
    find_search,
    find_sign,
    open_search,
    searches_of,
)
from shimstock.workshop.looking import DEFERS, see, see_all
from shimstock.workshop.refused import NotFound

if TYPE_CHECKING:
    from shimstock.trade.machine.book import Book
    from shimstock.workshop.models import DiaryEntry

TRAIL = 30
"""Entries of the diary that a search shows."""


def faults(asked: Asked, slug: str) -> HttpResponse:
    """Every search of a machine; or, of a form, a new one."""
    if asked.method != "POST":
        return _list(asked, slug)
    return do_and_show(
        asked,
        lambda: acts.begin_search(machine=slug, about=asked.POST.get("about", ""), who=asked.who),
        then=_with_words(reverse("fault-newest", args=[slug]), _words(asked)),
        again=lambda wrong: _list(asked, slug, wrong),
    )


def _words(asked: Asked) -> str:
    """Words to find the first signs by: of the sign it began with, else of what it is about."""
    return asked.POST.get("q", "") or asked.POST.get("about", "")


def newest(asked: Asked, slug: str) -> HttpResponse:
    """On to the search begun last; to the list where there is none."""
    rows = see(slug).row.searches.filter(withdrawn=False).order_by("-number")
    number = rows.values_list("number", flat=True).first()
    to = reverse("fault", args=[slug, number]) if number else reverse("faults", args=[slug])
    return HttpResponseRedirect(_with_words(to, asked.GET.get("q", "")))


def pick(asked: Asked, slug: str, sign: str) -> HttpResponse:
    """From a sign on the drawing to where it is said: the search that goes on, or a new one."""
    seen = see(slug)
    entry = seen.book.signs[find_sign(seen.book, sign)]
    row = open_search(seen.row)
    to = reverse("fault", args=[slug, row.number]) if row else reverse("faults", args=[slug])
    return HttpResponseRedirect(_with_words(to, entry.mark or entry.name))


def _with_words(to: str, words: str) -> str:
    """An address at which signs are looked for by some words."""
    return f"{to}?{urlencode({'q': words})}#signs" if words else to


def _list(asked: Asked, slug: str, wrong: Wrong | None = None) -> HttpResponse:
    seen, words = see(slug), asked.GET.get("q", "")
    rows = list(seen.row.searches.filter(withdrawn=False).order_by("-number"))
    found: dict[int, list[str]] = {}
    right = seen.row.faults_found.filter(withdrawn=False)
    for number, key in right.values_list("search", "cause"):
        cause = seen.book.causes.get(key)
        found.setdefault(number or 0, []).append(cause.name if cause else key)
    return page(
        asked,
        "fault_list.html",
        seen=seen,
        here="faults",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        typed=asked.POST or {"q": words, "about": _called(seen.book, words)},
        going_on=[row for row in rows if not row.ended],
        ended=[(row, found.get(row.number, [])) for row in rows if row.ended],
        defers=DEFERS,
    )


def _called(book: Book, words: str) -> str:
    """What a search is about that begins with a sign; "" where the words are no sign's."""
    found = found_by_word(book, words)
    return found[0].name if len(found) == 1 else ""


def fault(asked: Asked, slug: str, number: int) -> HttpResponse:
    """One search; or, of a form, what was seen, who is there, or how it ended."""
    if asked.method != "POST":
        return _shown(asked, slug, number)
    return do_and_show(
        asked,
        lambda: _act(asked.POST)(slug, number, asked.who, asked.POST),
        then=reverse("fault", args=[slug, number]),
        again=lambda wrong: _shown(asked, slug, number, wrong),
    )


def _shown(asked: Asked, slug: str, number: int, wrong: Wrong | None = None) -> HttpResponse:
    seen = see(slug)
    searches = searches_of(seen.row)
    row = next((each for each in searches if each.number == number), None)
    row = row or find_search(seen.row, number)
    return page(
        asked,
        "fault.html",
        seen=seen,
        here="faults",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        search=row,
        shown=Shown(look_again(seen, row), asked.GET, asked.POST if wrong else {}, searches),
        trail=trail(seen.row, row.number, TRAIL),
        defers=DEFERS,
    )


Act = Callable[[str, int, str, QueryDict], "DiaryEntry"]


def _say(machine: str, search: int, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.say_in_search(machine=machine, search=search, said=_said(typed), who=who)


def _said(typed: Mapping[str, str]) -> dict[str, str]:
    """What a form says otherwise than its page showed it."""
    told = {name: typed[name] for name in typed if name.startswith((SIGN, CAUSE))}
    return {about: word for about, word in told.items() if typed.get(f"was:{about}") != word}


def _at_hand(machine: str, search: int, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.set_at_hand(
        machine=machine,
        search=search,
        people=_people(typed.get("people", "")),
        young="young" in typed,
        missing=typed.getlist("missing"),
        who=who,
    )


def _found(machine: str, search: int, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.fault_found(
        machine=machine,
        search=search,
        cause=typed.get("cause", ""),
        how=typed.get("how", ""),
        ends="more" not in typed,
        who=who,
    )


def _give_up(machine: str, search: int, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.end_search(machine=machine, search=search, given_up=True, who=who)


def _take_up(machine: str, search: int, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.take_up_search(machine=machine, search=search, who=who)


ACTS: dict[str, Act] = {
    "say": _say,
    "at-hand": _at_hand,
    "found": _found,
    "give-up": _give_up,
    "take-up": _take_up,
}


def _act(typed: QueryDict) -> Act:
    """What a form asks for. Raises NotFound for what cannot be done in a search."""
    wanted = typed.get("do", "")
    if wanted not in ACTS:
        raise NotFound("work in a search", wanted, ACTS)
    return ACTS[wanted]


def _people(typed: str) -> int:
    """How many people are there. Raises NotUnderstood."""
    text = typed.strip()
    if not text.isdecimal() or len(text) > 3:
        raise NotUnderstood(typed, "is no number of people", ("2",))
    return int(text)


def why(asked: Asked, slug: str, number: int, cause: str) -> HttpResponse:
    """The whole working behind the chance of one cause."""
    seen = see(slug)
    row = find_search(seen.row, number)
    found = look_again(seen, row)
    key = find_cause(seen.book, cause)
    return page(
        asked,
        "fault_why.html",
        seen=seen,
        here="faults",
        search=row,
        cause=seen.book.causes[key],
        why=None if found.cannot_be else found.why(key),
        found=found,
        defers=DEFERS,
    )


def counts(asked: Asked) -> HttpResponse:
    """What was found how often; or, of a form, counts from another workshop, in or back out."""
    if asked.method != "POST":
        return _counts(asked)
    return do_and_show(
        asked,
        lambda: _counted(asked),
        then=reverse("fault-counts"),
        again=lambda wrong: _counts(asked, wrong),
    )


def _counts(asked: Asked, wrong: Wrong | None = None) -> HttpResponse:
    return page(
        asked,
        "fault_counts.html",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        typed=asked.POST,
        counted=counts_shown(see_all()),
        imported=imported(),
        worth=BOOK_IS_WORTH,
    )


def _counted(asked: Asked) -> DiaryEntry:
    label = asked.POST.get("label", "")
    if asked.POST.get("do") == "take-back":
        return acts.withdraw_counts(label=label, who=asked.who)
    file = asked.FILES.get("file")
    return acts.import_counts(
        label=label,
        text=_text(file) if isinstance(file, UploadedFile) else "",
        replace="replace" in asked.POST,
        meant="meant" in asked.POST,
        who=asked.who,
    )


def _text(file: UploadedFile) -> str:
    """The text of a file. Raises NotUnderstood for one that is no text."""
    try:
        text: str = file.read(4 * LONGEST + 1).decode()
    except UnicodeDecodeError:
        raise NotUnderstood(str(file.name), "is no text", ("a file of counts",)) from None
    return text


def counts_file(asked: Asked) -> HttpResponse:
    """What was found in this workshop, as a file for another."""
    return HttpResponse(
        export_counts(),
        content_type="application/json",
        headers={"Content-Disposition": 'attachment; filename="fault-counts.json"'},
    )


URLS = [
    path("faults/", counts, name="fault-counts"),
    path("faults/counts.json", counts_file, name="fault-counts-file"),
    path("m/<slug:slug>/faults/", faults, name="faults"),
    path("m/<slug:slug>/faults/newest/", newest, name="fault-newest"),
    path("m/<slug:slug>/faults/pick/<str:sign>/", pick, name="fault-pick"),
    path("m/<slug:slug>/faults/<int:number>/", fault, name="fault"),
    path("m/<slug:slug>/faults/<int:number>/why/<str:cause>/", why, name="fault-why"),
]
