"""Changing one's own password: the old one is asked for, and every other device is signed out."""

import re
from itertools import pairwise

import pytest
from django.contrib.auth.hashers import check_password
from django.test import Client

from faces.web.people_door import PASSWORD, Clock, is_in, sign_in, somebody, to_phones
from shimstock.workshop.models import Device, Person

NEW = "another-long-one"


@pytest.fixture(autouse=True)
def clock(db, settings, monkeypatch):
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]  # quick
    to_phones(settings)
    return Clock(monkeypatch)


def change(client, old=PASSWORD, new=NEW, again=None, **more):
    typed = {"old": old, "new": new, "again": new if again is None else again}
    return client.post("/people/password/", {**typed, **more})


def stays_as_it_was() -> bool:
    return check_password(PASSWORD, Person.objects.get(name="Ida").password)


def test_the_new_password_lets_in_and_the_old_one_no_more():
    ida = somebody("Ida")
    answer = change(ida)

    assert answer.url == "/people/"
    assert "Your password is changed." in ida.get("/people/").content.decode()
    assert sign_in(Client(), "Ida").status_code == 422
    assert sign_in(Client(), "Ida", NEW).status_code == 302


def test_only_ones_own_password_is_changed_and_only_ones_own_devices_are_signed_out():
    here, there, ben = somebody("Ida"), Client(), somebody("Ben")
    sign_in(there, "Ida")
    before = Person.objects.get(name="Ben").password
    change(here, name="Ben")

    assert [is_in(here), is_in(there), is_in(ben)] == [True, False, True]
    assert Person.objects.get(name="Ben").password == before
    assert Device.objects.filter(person__name="Ida", ended_at=None).count() == 1


def test_it_says_on_how_many_devices_one_was_signed_out():
    ida = somebody("Ida")
    for _ in range(2):
        sign_in(Client(), "Ida")
    change(ida)

    assert "signed out on 2 other devices" in ida.get("/people/").content.decode()


def test_the_key_of_the_session_is_new_so_that_a_copied_one_is_worth_nothing():
    """A new key after a change of password: OWASP, Session Management Cheat Sheet, from memory."""
    ida, copied = somebody("Ida"), Client()
    copied.cookies["shed"] = ida.cookies["shed"].value
    change(ida)

    assert [is_in(ida), is_in(copied)] == [True, False]


def test_ones_own_phone_stays_for_the_rest_of_its_season(clock):
    somebody("Ida")
    phone = Client()
    sign_in(phone, "Ida", trusted="on")
    clock.goes_on(days=100)
    change(phone)
    clock.goes_on(days=99)
    assert is_in(phone)

    clock.goes_on(days=2)
    assert not is_in(phone)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"old": "not-her-password"}, "old password does not fit"),
        ({"again": "another-long-two"}, "not typed the same twice"),
        ({"new": PASSWORD}, "is the old one"),
        ({"new": "sh0rt"}, "too short"),
        ({"new": "password1"}, "too common"),
        ({"new": "", "old": ""}, "is the old one"),
    ],
)
def test_what_is_refused_is_said_and_changes_nothing(typed, said):
    here, there = somebody("Ida"), Client()
    sign_in(there, "Ida")
    refused = change(here, **typed)
    page = refused.content.decode()

    assert refused.status_code == 422
    assert said in page
    assert '<details class="card" open>' in page
    assert not any(each and each in page for each in (PASSWORD, NEW, *typed.values()))
    assert [is_in(here), is_in(there), stays_as_it_was()] == [True, True, True]


def test_guessing_the_old_one_grows_slow(clock):
    """Whoever holds a phone that is signed in is not let guess on."""
    ida = somebody("Ida")
    assert [change(ida, old="a guess").status_code for _ in range(5)] == [422] * 5
    refused = change(ida)

    assert refused.status_code == 429
    assert refused.headers["Retry-After"] == "30"
    assert stays_as_it_was()
    clock.goes_on(seconds=31)
    assert change(ida).status_code == 302


def test_a_slip_in_the_new_one_is_no_guess_and_a_change_is_no_miss():
    ida = somebody("Ida")
    for _ in range(6):
        change(ida, new="short")
    passwords = [PASSWORD, *(f"{NEW}{n}" for n in range(6))]

    assert [change(ida, old, new).status_code for old, new in pairwise(passwords)] == [302] * 6


def test_a_form_from_elsewhere_is_refused_and_one_of_ours_is_taken():
    strict = Client(enforce_csrf_checks=True)
    strict.cookies = somebody("Ida").cookies
    assert change(strict).status_code == 403
    assert stays_as_it_was()

    page = strict.get("/people/").content.decode()
    mark = re.search(r'csrfmiddlewaretoken" value="(\w+)"', page)
    assert change(strict, csrfmiddlewaretoken=mark[1]).status_code == 302


def test_nobody_changes_it_who_is_not_in_and_looking_changes_nothing(client):
    ida = somebody("Ida")

    assert change(client).url.startswith("/sign-in/")
    assert ida.get("/people/password/").url == "/people/"
    assert stays_as_it_was()


def test_where_only_this_computer_asks_there_is_no_password_to_change(settings):
    somebody("Ida")
    to_phones(settings)
    settings.SERVING = type(settings.SERVING)(who="Ida")
    asked = Client()

    assert change(asked).url == "/people/"
    assert "password" not in asked.get("/people/").content.decode()
    assert stays_as_it_was()
