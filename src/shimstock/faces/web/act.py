"""One way to do a thing from a page: the form comes once, writes over nobody, and says how it went.

A page's form holds two hidden fields beside its own (`{% form_marks seen %}` writes them): `form`,
its own key, and `seen`, the latest entry in the diary when the page was made.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.utils import timezone

from shimstock.faces.web.asked import Asked
from shimstock.faces.web.whole_number import whole_number
from shimstock.faces.web.wrong import Wrong, explained
from shimstock.workshop.looking import Seen
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.refused import Refused
from shimstock.workshop.sending import Sending, Sent, send_once

NOT_CONTENT = frozenset({"csrfmiddlewaretoken", "form", "seen", "kept_at"})
"""Fields of a form that say nothing about what is to be done."""

NOT_TYPED = frozenset({"page", "do"})
"""Fields that a page fills in itself."""

MOST_TOLD = 5
A_WHILE, KEPT_LONGEST = timedelta(minutes=1), timedelta(days=90)


@dataclass(frozen=True)
class Done:
    """What came of a form: what was written, or what was wrong."""

    sent: Sent | None = None
    wrong: Wrong | None = None


def do(asked: Asked, act: Callable[[], DiaryEntry]) -> Done:
    """Do what a form asks for; what is refused or not understood comes back in words.

    act: writes one entry into the diary.
    """
    try:
        return Done(sent=send_once(sending(asked), act))
    except Exception as error:
        wrong = explained(error)
        if wrong is None:
            raise
        refused = isinstance(error, Refused)
        return Done(wrong=_with_what_others_did(asked, wrong) if refused else wrong)


def _with_what_others_did(asked: Asked, wrong: Wrong) -> Wrong:
    """What is refused may be so because of others: say what they wrote since the page was made."""
    sent, match = sending(asked), asked.resolver_match
    slug = match.kwargs.get("slug") if match else None
    if wrong.meanwhile or sent.seen is None or not slug:
        return wrong
    others = DiaryEntry.objects.filter(machine__slug=slug, pk__gt=sent.seen).exclude(who=asked.who)
    told = tuple(f"{entry.who}: {entry.says}" for entry in others.order_by("pk")[:MOST_TOLD])
    return replace(wrong, meanwhile=told, typed=_typed(sent), again=False) if told else wrong


def _typed(sent: Sending) -> dict[str, list[str]]:
    """What a form held that somebody typed, without what the page filled in itself."""
    content = {name: list(values) for name, values in sent.content.items()}
    return {name: held for name, held in content.items() if name not in NOT_TYPED and any(held)}


def sending(asked: Asked) -> Sending:
    """The form as it was sent."""
    content = {
        name: [str(value) for value in asked.POST.getlist(name)]
        for name in sorted(asked.POST)
        if name not in NOT_CONTENT
    }
    return Sending(
        key=str(asked.POST.get("form", "")),
        content={"page": [asked.path], **content},
        seen=whole_number(str(asked.POST.get("seen", ""))),
    )


def typed_at(asked: Asked) -> datetime | None:
    """When a form was typed that was kept on the phone a while; None for one just sent.

    The phone's clock is believed only where it says a time that can be: not to come, and not
    longer ago than a phone keeps anything.
    """
    try:
        typed = datetime.fromisoformat(str(asked.POST.get("kept_at", "")))
        ago = timezone.now() - typed
    except (ValueError, TypeError, OverflowError):
        return None
    return typed if A_WHILE < ago < KEPT_LONGEST else None


def do_and_show(
    asked: Asked,
    act: Callable[[], DiaryEntry],
    *,
    then: str,
    again: Callable[[Wrong], HttpResponse],
) -> HttpResponse:
    """Do what a form asks for and go on to a page; or show the page again with what was wrong.

    then: the address to go on to. again: makes the page with what was typed, nothing lost.
    """
    done = do(asked, act)
    if done.wrong is not None:
        return again(done.wrong)
    assert done.sent is not None
    before = "This was in the book already: " if done.sent.repeated else ""
    messages.success(asked, f"{before}{done.sent.entry.says}", extra_tags=str(done.sent.entry.pk))
    return HttpResponseRedirect(then)


def page(
    asked: Asked, template: str, *, seen: Seen | None = None, status: int = 200, **shown: object
) -> HttpResponse:
    """Make a page. seen: the machine that it is about."""
    latest = shown.pop("latest", seen.latest if seen else "")
    context = {"seen": seen, "latest": latest, "here": "", "wrong": None, **shown}
    return render(asked, f"web/{template}", context, status=status)
