"""One way to do a thing from a page: the form comes once, writes over nobody, and says how it went.

A page's form holds two hidden fields beside its own (`{% form_marks seen %}` writes them): `form`,
its own key, and `seen`, the latest entry in the diary when the page was made.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect
from django.shortcuts import render

from shimstock.faces.web.asked import Asked
from shimstock.faces.web.wrong import Wrong, explained
from shimstock.workshop.looking import Seen
from shimstock.workshop.models import DiaryEntry
from shimstock.workshop.sending import Sending, Sent, send_once

NOT_CONTENT = frozenset({"csrfmiddlewaretoken", "form", "seen", "kept_at"})
"""Fields of a form that say nothing about what is to be done."""


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
        return Done(wrong=wrong)


def sending(asked: Asked) -> Sending:
    """The form as it was sent."""
    content = {
        name: [str(value) for value in asked.POST.getlist(name)]
        for name in sorted(asked.POST)
        if name not in NOT_CONTENT
    }
    seen = str(asked.POST.get("seen", ""))
    return Sending(
        key=str(asked.POST.get("form", "")),
        content={"page": [asked.path], **content},
        seen=int(seen) if seen.isdigit() else None,
    )


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
