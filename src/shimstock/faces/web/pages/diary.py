"""The diary: what was done, by whom, and undoing it."""

from __future__ import annotations

from django.http import HttpResponse
from django.urls import path, reverse
from django.utils.http import urlencode

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.pages.photos import last_photo
from shimstock.faces.web.places import address_of
from shimstock.faces.web.whole_number import whole_number
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.workshop import acts, diary_told
from shimstock.workshop.acts.undoing import in_the_way, why_not_undo
from shimstock.workshop.changes import undoing_told
from shimstock.workshop.diary_told import A_PAGE, Told, Wanted
from shimstock.workshop.looking import Seen, see
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.refused import NotFound
from shimstock.workshop.standing import where_was_i


def diary(asked: Asked, slug: str) -> HttpResponse:
    """What happened, newest first, by evening."""
    seen = see(slug)
    wanted = _wanted(asked)
    found = diary_told.told(seen.row, seen.book, wanted, A_PAGE + 1)
    shown, more = found.entries[:A_PAGE], len(found.entries) > A_PAGE
    whole = wanted == Wanted()
    return page(
        asked,
        "diary.html",
        seen=seen,
        here="diary",
        wanted=wanted,
        about=diary_told.place_in_short(seen.book, wanted.about) or wanted.about,
        everybody=found.everybody,
        where=where_was_i(seen, shown[0].entry) if whole and shown else "",
        photo=last_photo(seen.row) if whole else None,
        evenings=[
            (evening, [_line(seen, each) for each in lines])
            for evening, lines in diary_told.by_evening(shown)
        ],
        older=_older(wanted, shown[-1].entry.pk) if more else "",
    )


def _wanted(asked: Asked) -> Wanted:
    return Wanted(
        who=str(asked.GET.get("who", "")),
        about=str(asked.GET.get("about", "")),
        words=str(asked.GET.get("q", "")),
        before=whole_number(str(asked.GET.get("before", ""))),
    )


def _older(wanted: Wanted, last: int) -> str:
    asked = {"who": wanted.who, "about": wanted.about, "q": wanted.words, "before": str(last)}
    return urlencode({name: value for name, value in asked.items() if value})


def _line(seen: Seen, told: Told) -> dict[str, object]:
    """An entry with links to what it is about."""
    links = {
        diary_told.place_in_short(seen.book, place): address_of(place, seen.row.slug)
        for place in told.places
    }
    return {"told": told, "links": [(name, to) for name, to in links.items() if name and to]}


def undo(asked: Asked, slug: str, entry: int) -> HttpResponse:
    """What undoing an act would put back, and what stands against it; then to undo it."""
    seen = see(slug)
    found = seen.row.diary.filter(pk=entry).first()
    if found is None:
        raise NotFound("entry in the diary", str(entry), [])
    if asked.method != "POST":
        return _undo(asked, seen, found)
    return do_and_show(
        asked,
        lambda: acts.undo(entry_id=found.pk, who=asked.who),
        then=_after(found, slug),
        again=lambda wrong: _undo(asked, seen, found, wrong),
    )


def _after(entry: DiaryEntry, slug: str) -> str:
    """The diary; the shed where the machine itself was booked in by it."""
    return reverse("shed") if entry.act == "add machine" else reverse("diary", args=[slug])


def _undo(asked: Asked, seen: Seen, entry: DiaryEntry, wrong: Wrong | None = None) -> HttpResponse:
    return page(
        asked,
        "undo.html",
        seen=seen,
        here="diary",
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        entry=entry,
        put_back=undoing_told(entry, seen.book),
        against=why_not_undo(entry),
        first=in_the_way(entry),
    )


URLS = [
    path("m/<slug:slug>/diary/", diary, name="diary"),
    path("m/<slug:slug>/diary/<int:entry>/undo/", undo, name="undo"),
]
