"""What a page says when something is refused, not understood or not there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import cast

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

from shimstock.faces.web.asked import Asked
from shimstock.trade.machine.sheet import BookErrors
from shimstock.trade.numbers.not_possible import NotPossible
from shimstock.trade.numbers.not_understood import HardlyMeant, NotUnderstood
from shimstock.trade.reach.target import UnknownName
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.sending import ChangedMeanwhile, Content, SentOtherwise

NOT_DONE = 422  # understood as a form, and not done
NOT_THERE = 404


@dataclass(frozen=True)
class Wrong:
    """What is wrong, and what would do.

    slip: it looks like a slip of the finger; the form may be sent again as meant.
    meanwhile: what others wrote since the page was made. again: the form may be sent again as it
    stands; else typed is what was typed into it, since its page shows another form by now.
    first, second: two contents of one form.
    """

    reasons: tuple[str, ...]
    would_do: tuple[str, ...] = ()
    slip: bool = False
    meanwhile: tuple[str, ...] = ()
    first: Content | None = None
    second: Content | None = None
    typed: Content | None = None
    again: bool = True
    not_there: bool = False


def explained(error: Exception) -> Wrong | None:
    """Say in words what an error means; None for one that nobody foresaw."""
    match error:
        case HardlyMeant():
            said = f"{error.typed.strip()} {error.wrong}."
            return Wrong((said,), tuple(error.would_do), slip=True)
        case NotUnderstood():
            typed = error.typed.strip() or "(nothing)"
            return Wrong((f"{typed} {error.wrong}.",), tuple(error.would_do))
        case NotPossible():
            return Wrong((f"{error.what} {error.rule}.",), _if_any(error.would_do))
        case NotFound():
            return Wrong((str(error),), not_there=True)
        case UnknownName():
            return Wrong((str(error),), not_there=True)
        case Refused():
            return Wrong(error.reasons)
        case BookErrors():
            return Wrong(tuple(str(problem) for problem in error.problems))
        case ChangedMeanwhile():
            told = tuple(f"{entry.who}: {entry.says}" for entry in error.entries)
            why = "Somebody else changed this after you opened the page. Nothing of yours is lost."
            return Wrong((why,), meanwhile=told)
        case SentOtherwise():
            return Wrong((str(error),), first=error.first, second=error.second)
    return None


class SayWhatIsWrong:
    """Turns an error of the trade that a page did not catch into a page that says it."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer."""
        return self.get_response(request)

    def process_exception(self, request: HttpRequest, error: Exception) -> HttpResponse | None:
        """The page that says what is wrong; None where nobody foresaw it."""
        wrong = explained(error)
        if wrong is None:
            return None
        status = NOT_THERE if wrong.not_there else NOT_DONE
        return _said(request, "Not there" if wrong.not_there else "Not done", wrong, status)


def not_there(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Nothing at this address."""
    wrong = Wrong((f"There is no page at {request.path}.",), ("Go back to the shed.",))
    return _said(request, "Not there", wrong, NOT_THERE)


def not_allowed(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Something that this person may not do."""
    return _said(request, "Not allowed", Wrong((str(exception) or "Not allowed.",)), 403)


def not_asked_well(request: HttpRequest, exception: Exception) -> HttpResponse:
    """A request that no page of ours makes."""
    wrong = Wrong(("The shed did not understand what this browser asked for.",))
    return _said(request, "Not understood", wrong, 400)


def form_grew_old(request: HttpRequest, reason: str = "") -> HttpResponse:
    """A form whose mark does not fit: an old page, or a page from elsewhere."""
    wrong = Wrong(
        ("The page with this form has grown old, so nothing was written.",),
        ("Go back, load the page again, and send the form.",),
    )
    return _said(request, "Not done", wrong, 403)


def broke(request: HttpRequest) -> HttpResponse:
    """Something that nobody foresaw."""
    return HttpResponse(
        "<!doctype html><html lang=en><title>Broken</title><p>Something broke here, and nothing of "
        "this form was written. What was in the book before is there still. "
        "The terminal on which the shed is served says what it was. <a href=/>Back to the shed</a>",
        status=500,
    )


def _said(request: HttpRequest, title: str, wrong: Wrong, status: int) -> HttpResponse:
    asked = cast(Asked, request)
    if not hasattr(asked, "who"):
        asked.who = ""
    return render(request, "web/wrong_page.html", {"title": title, "wrong": wrong}, status=status)


def _if_any(text: str) -> tuple[str, ...]:
    return (text,) if text else ()
