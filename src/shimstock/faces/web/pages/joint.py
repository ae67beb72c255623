"""One joint: opened, made ready, closed, checked; what it takes and what it lets one reach."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from django.http import HttpResponse
from django.http.request import QueryDict
from django.urls import path, reverse

from shimstock.faces.web.act import do_and_show, page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.pages.photos import photos_of
from shimstock.faces.web.wrong import NOT_DONE, Wrong
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import acts
from shimstock.workshop.at_joint import at_joint
from shimstock.workshop.looking import DEFERS, see
from shimstock.workshop.refused import NotFound
from shimstock.workshop.told import bags_of, notes_on, told_of

if TYPE_CHECKING:
    from shimstock.workshop.models import DiaryEntry

LAST = 10
"""Entries of the diary that the page shows."""


def joint(asked: Asked, slug: str, joint: str) -> HttpResponse:
    """The joint; or, of a form, what it asks to be done."""
    if asked.method == "POST":
        return _done(asked, slug, joint)
    return _shown(asked, slug, joint)


def _done(asked: Asked, slug: str, joint: str) -> HttpResponse:
    return do_and_show(
        asked,
        lambda: _act(asked.POST)(slug, joint, asked.who, asked.POST),
        then=reverse("joint", args=[slug, at_joint(see(slug), joint).key]),
        again=lambda wrong: _shown(asked, slug, joint, wrong),
    )


def _shown(asked: Asked, slug: str, joint: str, wrong: Wrong | None = None) -> HttpResponse:
    from shimstock.trade.reach.while_open import RATE, TOUCH_UP

    seen = see(slug)
    at = at_joint(seen, joint)
    photos = photos_of(seen.row, at.place)
    return page(
        asked,
        "joint.html",
        seen=seen,
        status=NOT_DONE if wrong else 200,
        wrong=wrong,
        at=at,
        doing=_first_what_was_tried(at.actions, asked.POST.get("do")),
        tried=asked.POST.get("do") in at.actions,
        typed=asked.POST,
        typed_gaskets=asked.POST.getlist("gasket"),
        defers=DEFERS,
        rate=RATE,
        touch_up=TOUCH_UP,
        about=at.place,
        machine=seen.row,
        notes=notes_on(seen.row, at.place),
        bags=bags_of(seen.row, at.place),
        photos=photos,
        shown_now=at.shown_now({photo.moment for photo in photos}),
        told=told_of(seen.row, at.place, LAST),
    )


def _first_what_was_tried(actions: tuple[str, ...], tried: str | None) -> tuple[str, ...]:
    """What may be done, first that which was refused: its form holds what was typed."""
    return tuple(sorted(actions, key=lambda each: each != tried))


Act = Callable[[str, str, str, QueryDict], "DiaryEntry"]


def _open(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.open_joint(
        machine=machine,
        joint=joint,
        who=who,
        path="path" in typed,
        bolts_out=_count(typed.get("bolts", "")),
        thickness_found=typed.get("thickness", "").strip() or None,
        meant="meant" in typed,
    )


def _cover(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.cover_joint(machine=machine, joint=joint, who=who)


def _ready(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.ready_joint(
        machine=machine,
        joint=joint,
        who=who,
        faces_clean=True if "faces_clean" in typed else None,
        gaskets=typed.getlist("gasket"),
        bolts=_count(typed.get("bolts", "")),
        meant="meant" in typed,
    )


def _close(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.close_joint(
        machine=machine,
        joint=joint,
        who=who,
        torqued="torqued" in typed,
        dry="dry" in typed,
        reason=typed.get("reason", ""),
    )


def _torque(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.close_joint(machine=machine, joint=joint, who=who, torqued=True)


def _leak(machine: str, joint: str, who: str, typed: QueryDict) -> DiaryEntry:
    return acts.leak_check(
        machine=machine,
        joint=joint,
        who=who,
        result=typed.get("result") or typed.get("meant", ""),
        chalk="chalk" in typed,
        standing="standing" in typed,
        meant="meant" in typed,
    )


ACTS: dict[str, Act] = {
    "open": _open,
    "cover": _cover,
    "ready": _ready,
    "close": _close,
    "torque": _torque,
    "leak": _leak,
}


def _act(typed: QueryDict) -> Act:
    """What a form asks for. Raises NotFound for what cannot be done at a joint."""
    wanted = typed.get("do", "")
    if wanted not in ACTS:
        raise NotFound("work at a joint", wanted, ACTS)
    return ACTS[wanted]


def _count(typed: str) -> int | None:
    """How many were counted; None where nothing was typed. Raises NotUnderstood."""
    text = typed.strip()
    if text and not text.isdecimal():
        raise NotUnderstood(text, "is no count of fastenings", ("12",))
    return int(text) if text else None


URLS = [
    path("m/<slug:slug>/joint/<str:joint>/", joint, name="joint"),
]
