"""Who works here: signing in and out, joining by a code, and the devices that are signed in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import segno
from django.conf import settings
from django.contrib import messages
from django.http import HttpResponse, HttpResponseRedirect
from django.middleware.csrf import rotate_token
from django.urls import path, reverse
from django.utils.safestring import SafeString, mark_safe
from django.views.decorators.debug import sensitive_post_parameters

from shimstock.faces.web.act import page
from shimstock.faces.web.asked import Asked
from shimstock.faces.web.who import our_own
from shimstock.faces.web.wrong import NOT_DONE, explained
from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop import people as workers
from shimstock.workshop.models import Device, Person
from shimstock.workshop.refused import Refused
from shimstock.workshop.wording import count_of

TOO_MANY = 429
WHILE_IT_IS_OPEN = 0  # seconds, as a session's end: with its browser


@sensitive_post_parameters("password")
def sign_in(asked: Asked) -> HttpResponse:
    """Name and password; then on to the page that was wanted."""
    then = our_own(asked, asked.POST.get("then") or asked.GET.get("then", ""))
    if not settings.SERVING.sign_in:
        return HttpResponseRedirect(then)
    if asked.method != "POST":
        return page(asked, "sign_in.html", then=then, anybody=workers.anybody())
    try:
        person = workers.check_sign_in(**_typed(asked), address=_from(asked))
    except Refused as error:
        return _again(asked, "sign_in.html", error, then=then, anybody=True)
    _sign_in_here(asked, person)
    return HttpResponseRedirect(then)


def sign_out(asked: Asked) -> HttpResponse:
    """Sign out on this device."""
    if asked.method == "POST" and settings.SERVING.sign_in:
        _leave(asked)
    return HttpResponseRedirect(reverse("sign-in"))


def join_code(asked: Asked) -> HttpResponse:
    """A code that was typed: on to its page."""
    typed = asked.GET.get("code", "").strip()
    if not typed:
        return HttpResponseRedirect(reverse("sign-in"))
    return HttpResponseRedirect(reverse("join", args=[workers.code_typed(typed)]))


@sensitive_post_parameters("password")
def join(asked: Asked, code: str) -> HttpResponse:
    """Name and password of somebody new, by a code."""
    if not settings.SERVING.sign_in:
        return HttpResponseRedirect(reverse("people"))
    try:
        found = workers.look_at_code(code, _from(asked))
    except Refused as error:
        return _again(asked, "join.html", error, good=False)
    renews = found.made_by == workers.AT_THE_COMPUTER
    if asked.method != "POST":
        return page(asked, "join.html", good=True, renews=renews)
    try:
        person = workers.join(found, **_typed(asked))
    except (Refused, NotUnderstood) as error:
        return _again(asked, "join.html", error, good=True, renews=renews)
    _sign_in_here(asked, person)
    messages.success(asked, f"You are in, {person.name}: the diary names you so.")
    return HttpResponseRedirect(reverse("shed"))


def people(asked: Asked) -> HttpResponse:
    """Who is signed in on which device, and how to let somebody in."""
    return _people(asked)


def let_in(asked: Asked) -> HttpResponse:
    """Make a code and show it, this once."""
    if asked.method != "POST" or not settings.SERVING.sign_in:
        return HttpResponseRedirect(reverse("people"))
    code = workers.let_in(asked.who)
    at = settings.SERVING.address or asked.build_absolute_uri("/").rstrip("/")
    address = f"{at}{reverse('join', args=[code])}"
    answer = _people(asked, code=code, address=address, square=_square(address))
    answer.headers["Cache-Control"] = "no-store"  # a code is shown this once
    return answer


def end_device(asked: Asked, number: int) -> HttpResponse:
    """Sign a device out."""
    if asked.method == "POST" and settings.SERVING.sign_in:
        device = workers.end_device(number)
        asked.session.delete(device.session)
        messages.success(asked, f"{device.person.name} is signed out on the {device.called}.")
    return HttpResponseRedirect(reverse("people"))


@sensitive_post_parameters("old", "new", "again")
def change_password(asked: Asked) -> HttpResponse:
    """A new password for whoever asks: signed in here still, and nowhere else."""
    if asked.method != "POST" or not settings.SERVING.sign_in:
        return HttpResponseRedirect(reverse("people"))
    here = str(asked.session.session_key)
    typed = {name: str(asked.POST.get(name, "")) for name in ("old", "new", "again")}
    try:
        ended = workers.change_password(asked.who, **typed, session=here, address=_from(asked))
    except Refused as error:
        return _refused(error, lambda **why: _people(asked, **why))
    asked.session.cycle_key()
    workers.renew_session(here, str(asked.session.session_key))
    rotate_token(asked)
    elsewhere = f"; you are signed out on {count_of(ended, 'other device')}" if ended else ""
    messages.success(asked, f"Your password is changed{elsewhere}.")
    return HttpResponseRedirect(reverse("people"))


def _people(asked: Asked, **shown: Any) -> HttpResponse:
    devices = _listed(asked) if settings.SERVING.sign_in else []
    good_for = int(workers.CODE_GOOD_FOR.total_seconds() / 60)
    return page(asked, "people.html", here="people", devices=devices, good_for=good_for, **shown)


@dataclass(frozen=True)
class Listed:
    """A device in the list. here: whether it is the one that is asking."""

    device: Device
    here: bool


def _listed(asked: Asked) -> list[Listed]:
    here = asked.session.session_key
    rows = workers.devices().order_by("person__name", "-seen_at")
    return [Listed(device, device.session == here) for device in rows]


def _typed(asked: Asked) -> dict[str, str]:
    return {name: str(asked.POST.get(name, "")) for name in ("name", "password")}


def _from(asked: Asked) -> str:
    """Where a request comes from."""
    return str(asked.META.get("REMOTE_ADDR", ""))


def _again(asked: Asked, template: str, error: Exception, **shown: Any) -> HttpResponse:
    """The page with the name as it was typed, and what was wrong."""
    typed: dict[str, Any] = {
        "name": asked.POST.get("name", ""),
        "trusted": asked.POST.get("trusted") == "on",
    }
    return _refused(error, lambda **why: page(asked, template, **typed, **shown, **why))


def _refused(error: Exception, again: Callable[..., HttpResponse]) -> HttpResponse:
    """A page made again with what was wrong, which says how long to wait."""
    wait = getattr(error, "wait", 0)
    answer = again(status=TOO_MANY if wait else NOT_DONE, wrong=explained(error))
    if wait:
        answer.headers["Retry-After"] = str(wait)
    return answer


def _sign_in_here(asked: Asked, person: Person) -> None:
    """Sign somebody in on this device, under a session key that nobody can have known before."""
    _leave(asked)
    asked.session.create()
    asked.session["person"] = person.pk  # an empty session would be given no cookie
    trusted = asked.POST.get("trusted") == "on"
    asked.session.set_expiry(None if trusted else WHILE_IT_IS_OPEN)
    workers.sign_device_in(
        person,
        session=str(asked.session.session_key),
        called=_called(asked.headers.get("User-Agent", "")),
        trusted=trusted,
    )
    rotate_token(asked)


def _leave(asked: Asked) -> None:
    """End what this device was signed in as, if it was."""
    for device in workers.devices().filter(session=asked.session.session_key):
        workers.end_device(device.pk)
    asked.session.flush()


def _called(user_agent: str) -> str:
    """What a browser says it runs on, by the words that phones and tablets put there."""
    if "Tablet" in user_agent:
        return "tablet"
    return "phone" if "Mobi" in user_agent else "computer or tablet"


def _square(address: str) -> SafeString:
    """A square to scan; it brings its own white ground, for pages in the dark."""
    drawn = segno.make(address, error="m", micro=False)
    return mark_safe(drawn.svg_inline(omitsize=True, light="#fff", svgclass=None, lineclass=None))


URLS = [
    path("sign-in/", sign_in, name="sign-in"),
    path("sign-out/", sign_out, name="sign-out"),
    path("join/", join_code, name="join-code"),
    path("join/<code>/", join, name="join"),
    path("people/", people, name="people"),
    path("people/let-in/", let_in, name="let-in"),
    path("people/password/", change_password, name="change-password"),
    path("people/end/<int:number>/", end_device, name="end-device"),
]
