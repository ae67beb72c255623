"""Who works in this shed: joining by a code, signing in, and the devices that are signed in.

A name becomes the diary's `who`. A password is kept as its slow digest, a code as its digest.
"""

from __future__ import annotations

import secrets
import unicodedata
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from shimstock.trade.numbers.not_understood import NotUnderstood
from shimstock.workshop.refused import NotFound, Refused
from shimstock.workshop.sweeping import sweep_codes
from shimstock.workshop.tries import fitted, hold_try

if TYPE_CHECKING:
    from django.db.models import QuerySet

    from shimstock.workshop.models import Device, JoinCode, Person

SEASON = timedelta(days=200)
"""How long one's own phone stays signed in."""
VISIT = timedelta(hours=12)
"""How long any other device does, where its browser is not closed before."""
CODE_GOOD_FOR = timedelta(minutes=15)
CODE_TOLD_FOR = timedelta(days=1)
"""How long after that it is still said of a code why it lets nobody in."""
SEEN_EVERY = timedelta(minutes=10)
"""How often it is written down that a device is in use."""

LETTERS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"  # none that is taken for another on a dim screen
CODE_LETTERS = 8
LONGEST_NAME = 100
AT_THE_COMPUTER = ""
"""Who made a code, where it was made by a command at the computer that holds the shed."""


def anybody() -> bool:
    """Whether anybody has joined yet."""
    from shimstock.workshop.models import Person

    return Person.objects.exists()


# --- joining -----------------------------------------------------------------------------


def let_in(made_by: str) -> str:
    """Make a code that lets one person in, once, within CODE_GOOD_FOR.

    made_by: who made it; AT_THE_COMPUTER for one that may also give a known name a new password.
    Codes that ran out long ago, used or not, are swept.
    """
    from shimstock.workshop.models import JoinCode

    code = "".join(secrets.choice(LETTERS) for _ in range(CODE_LETTERS))
    now = _now()
    sweep_codes(now - CODE_TOLD_FOR)
    JoinCode.objects.create(
        digest=_digest(code), made_by=made_by, made_at=now, good_until=now + CODE_GOOD_FOR
    )
    return f"{code[:4]}-{code[4:]}"


def code_typed(typed: str) -> str:
    """A code as it was made, of one that was typed: any case, with blanks or without the dash.

    >>> code_typed(" k7qm 3xpd")
    'K7QM-3XPD'
    """
    letters = "".join(each for each in typed.upper() if each.isalnum())
    return f"{letters[:4]}-{letters[4:]}"


def look_at_code(typed: str, address: str) -> JoinCode:
    """Find a code that is still good.

    address: where it is tried from, so that guessing grows slow. Raises Refused, TooManyTries.
    """
    from shimstock.workshop.models import JoinCode

    held = hold_try(name="", address=address, now=_now())
    found = JoinCode.objects.filter(digest=_digest(code_typed(typed))).first()
    if found is None:
        raise Refused([f"Code {typed} is none of this shed's; look at its letters again"])
    fitted(held)
    if found.used_at is not None:
        raise Refused([f"Code {typed} has let somebody in already; ask for a new one"])
    if found.good_until < _now():
        raise Refused(
            [f"Code {typed} was good until {_clock(found.good_until)}; ask for a new one"]
        )
    return found


def join(code: JoinCode, *, name: str, password: str) -> Person:
    """Let somebody in by a code that was looked at; it is used up by it.

    A code made at the computer may name somebody known: that person gets the new password and is
    signed out everywhere. Raises Refused, NotUnderstood; the code stays good then.
    """
    from django.contrib.auth.hashers import make_password
    from django.db import transaction

    from shimstock.workshop.models import Person

    called = named(name)
    _check_password(password)
    digest = make_password(password)
    with transaction.atomic():
        _use_up(code)
        person = person_called(called)
        if person is None:
            return Person.objects.create(name=called, password=digest, joined_at=_now())
        if code.made_by != AT_THE_COMPUTER:
            raise Refused([f"{person.name} works here already; another name, such as {called} B."])
        person.password = digest
        person.save(update_fields=["password"])
        _end_devices(person)
        return person


def named(typed: str) -> str:
    """A person's name as the diary will hold it. Raises NotUnderstood.

    >>> named("  Ida   of the hill ")
    'Ida of the hill'
    """
    name = " ".join(unicodedata.normalize("NFC", typed).split())
    would_do = ("a first name, such as Ida",)
    if not name:
        raise NotUnderstood(typed, "is no name", would_do)
    if len(name) > LONGEST_NAME:
        raise NotUnderstood(typed, f"is longer than {LONGEST_NAME} letters", would_do)
    if not name.isprintable():
        raise NotUnderstood(typed, "holds a sign that cannot be printed", would_do)
    return name


def person_called(name: str) -> Person | None:
    """The person of that name, in any case."""
    from shimstock.workshop.models import Person

    wanted = _key(name)
    return next((each for each in Person.objects.all() if _key(each.name) == wanted), None)


def _use_up(code: JoinCode) -> None:
    from shimstock.workshop.models import JoinCode

    if not JoinCode.objects.filter(pk=code.pk, used_at=None).update(used_at=_now()):
        raise Refused(["This code has let somebody in this moment; ask for a new one"])


def _check_password(password: str) -> None:
    from django.contrib.auth.password_validation import validate_password
    from django.core.exceptions import ValidationError

    try:
        validate_password(password)
    except ValidationError as error:
        raise Refused(error.messages) from None


def _digest(code: str) -> str:
    """The digest of a code, made with the shed's secret: a copied database tells no code."""
    from django.utils.crypto import salted_hmac

    return salted_hmac("shimstock join code", code.replace("-", ""), algorithm="sha256").hexdigest()


# --- signing in --------------------------------------------------------------------------


def check_sign_in(*, name: str, password: str, address: str) -> Person:
    """The person whose name and password these are.

    An unknown name takes as long, and is answered with the same words. address: where it is tried
    from. Raises Refused, TooManyTries.
    """
    from django.contrib.auth.hashers import check_password, make_password

    held = hold_try(name=_key(name)[:LONGEST_NAME], address=address, now=_now())
    person = person_called(name)
    if person is None:
        make_password(password)  # takes as long as checking one
    if person is None or not check_password(password, person.password):
        raise Refused(["This name and this password do not belong together"])
    fitted(held)
    return person


def change_password(
    name: str, *, old: str, new: str, again: str, session: str, address: str
) -> int:
    """Give the person of that name a new password, and sign them out everywhere else.

    old: the password until now. again: the new one once more. session: key of the session that
    goes on. address: where it is tried from, so that guessing the old one grows slow.
    Returns how many other devices were signed out. Raises NotFound, Refused, TooManyTries.
    """
    from django.contrib.auth.hashers import make_password
    from django.db import transaction

    person = person_called(name)
    if person is None:
        raise NotFound("person who works here", name, [])
    _check_new_password(old, new, again)
    _check_old_password(person, old, address)
    digest = make_password(new)
    with transaction.atomic():
        person.password = digest
        person.save(update_fields=["password"])
        return _end_devices(person, but=session)


def _check_old_password(person: Person, old: str, address: str) -> None:
    from django.contrib.auth.hashers import check_password

    held = hold_try(name=_key(person.name), address=address, now=_now())
    if not check_password(old, person.password):
        raise Refused(["The old password does not fit; type it again"])
    fitted(held)


def _check_new_password(old: str, new: str, again: str) -> None:
    if new != again:
        raise Refused(["The new password was not typed the same twice; type both again"])
    if new == old:
        raise Refused(["The new password is the old one; think of another"])
    _check_password(new)


# --- devices -----------------------------------------------------------------------------


def sign_device_in(person: Person, *, session: str, called: str, trusted: bool) -> Device:
    """Note that somebody is signed in on a device.

    session: key of its session. called: what it says it is. trusted: stays for a season.
    """
    from shimstock.workshop.models import Device

    now = _now()
    return Device.objects.create(
        person=person, session=session, called=called[:200], trusted=trusted,
        signed_in_at=now, seen_at=now,
    )  # fmt: skip


def who_is_on(session: str) -> str:
    """The name of the person signed in with a session; "" for nobody. Notes that it is in use."""
    device = devices().filter(session=session).first()
    if device is None:
        return ""
    now = _now()
    if now - device.seen_at > SEEN_EVERY:
        device.seen_at = now
        device.save(update_fields=["seen_at"])
    return device.person.name


def devices() -> QuerySet[Device]:
    """Devices that are signed in now, with their people."""
    from django.db.models import Q

    from shimstock.workshop.models import Device

    now = _now()
    lasting = Q(trusted=True, signed_in_at__gt=now - SEASON) | Q(signed_in_at__gt=now - VISIT)
    return Device.objects.filter(lasting, ended_at=None).select_related("person")


def renew_session(was: str, now: str) -> None:
    """Let a device go on under another session key; one that somebody copied is worth nothing."""
    from shimstock.workshop.models import Device

    Device.objects.filter(session=was).update(session=now)


def end_device(number: int) -> Device:
    """Sign a device out, whoever is on it. Raises NotFound where it is not signed in."""
    device = devices().filter(pk=number).first()
    if device is None:
        raise NotFound("device that is signed in", str(number), [])
    device.ended_at = _now()
    device.save(update_fields=["ended_at"])
    return device


def _end_devices(person: Person, but: str = "") -> int:
    """Sign somebody out everywhere, or everywhere but on one device. but: key of its session."""
    ended = devices().filter(person=person).exclude(session=but).count()
    person.devices.filter(ended_at=None).exclude(session=but).update(ended_at=_now())
    return ended


# --- words and times ---------------------------------------------------------------------


def _key(name: str) -> str:
    """What two spellings of one name share."""
    return " ".join(unicodedata.normalize("NFC", name).split()).casefold()


def _clock(when: datetime) -> str:
    from django.utils.timezone import localtime

    return f"{localtime(when):%H:%M}"


def _now() -> datetime:
    from django.utils import timezone

    return timezone.now()
