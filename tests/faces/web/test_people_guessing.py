"""Guessing grows slow: for a name, from an address, and for codes."""

import pytest
from django.test import Client

from faces.web.people_door import Clock, a_code, join, sign_in, somebody, to_phones
from shimstock.workshop.models import JoinCode, SignInTry


@pytest.fixture
def clock(db, settings, monkeypatch):
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]  # quick
    to_phones(settings)
    return Clock(monkeypatch)


def from_address(address: str) -> Client:
    return Client(REMOTE_ADDR=address)


def missed(name, client, times):
    return [sign_in(client, name, "a wrong one").status_code for _ in range(times)]


def test_after_five_misses_even_the_right_password_waits(clock):
    somebody("Ida")
    client = Client()

    assert missed("Ida", client, 5) == [422] * 5
    refused = sign_in(client, "Ida")
    assert refused.status_code == 429
    assert "Wait 30 seconds" in refused.content.decode()
    assert refused.headers["Retry-After"] == "30"

    clock.goes_on(seconds=31)
    assert sign_in(client, "Ida").status_code == 302


def test_the_wait_doubles_with_each_miss(clock):
    somebody("Ida")
    client = Client()
    missed("Ida", client, 5)
    waits = []
    for _ in range(4):
        waits.append(int(sign_in(client, "Ida").headers["Retry-After"]))
        clock.goes_on(seconds=waits[-1] + 1)
        missed("Ida", client, 1)

    assert waits == [30, 60, 120, 240]


@pytest.mark.parametrize("name", ["Ida", "Nobody"])
def test_a_name_waits_wherever_it_is_tried_from_and_whether_it_is_known_or_not(name, clock):
    somebody("Ida")
    for last in range(5):
        missed(name, from_address(f"192.0.2.{last}"), 1)

    assert missed(name.upper(), from_address("192.0.2.99"), 1) == [429]
    assert missed("Ben", from_address("192.0.2.99"), 1) == [422]


def test_an_address_waits_whatever_name_it_tries(clock):
    client = from_address("192.0.2.7")
    for name in ("Ann", "Ben", "Ida", "Zoe", "Max"):
        missed(name, client, 1)

    assert missed("Kim", client, 1) == [429]
    assert missed("Kim", from_address("192.0.2.8"), 1) == [422]


def test_misses_are_forgotten_after_a_quarter_of_an_hour(clock):
    missed("Ida", Client(), 4)
    clock.goes_on(minutes=16)

    assert missed("Ida", Client(), 5) == [422] * 5


def test_signing_in_rightly_is_no_miss(clock):
    somebody("Ida")

    assert [sign_in(Client(), "Ida").status_code for _ in range(8)] == [302] * 8


def test_codes_are_not_guessed_either(clock):
    guesser = from_address("192.0.2.7")
    tried = [guesser.get("/join/AAAA-AAAA/").status_code for _ in range(6)]

    assert tried == [422] * 5 + [429]
    assert guesser.get(f"/join/{a_code()}/").status_code == 429
    assert join(from_address("192.0.2.8"), "Ida").status_code == 302


def test_a_code_is_good_for_a_quarter_of_an_hour(clock):
    code = a_code("Ann")
    clock.goes_on(minutes=14)
    assert Client().get(f"/join/{code}/").status_code == 200

    clock.goes_on(minutes=2)
    late = join(Client(), "Ida", code)
    assert late.status_code == 422
    assert "ask for a new one" in late.content.decode()


def test_a_try_counts_before_it_is_checked_so_that_many_at_once_do_not_slip_through(
    clock, monkeypatch
):
    from django.contrib.auth import hashers

    somebody("Ida")
    counted = []
    monkeypatch.setattr(
        hashers,
        "check_password",
        lambda *_: counted.append(SignInTry.objects.filter(name="ida").count()),
    )
    missed("Ida", Client(), 2)

    assert counted == [1, 2]


def test_tries_are_swept_by_the_next_one_once_they_count_no_more(clock):
    missed("Ida", Client(), 3)
    clock.goes_on(minutes=14)
    missed("Ben", from_address("192.0.2.8"), 1)
    assert SignInTry.objects.count() == 4

    clock.goes_on(minutes=2)
    missed("Ben", from_address("192.0.2.8"), 1)
    assert set(SignInTry.objects.values_list("name", flat=True)) == {"ben"}


def test_a_try_that_fitted_is_swept_too(clock):
    somebody("Ida")
    clock.goes_on(minutes=16)
    sign_in(Client(), "Ida")

    assert SignInTry.objects.count() == 1


def test_codes_are_swept_by_the_next_one_a_day_after_they_ran_out(clock):
    """Until then the page still says why such a code lets nobody in."""
    used, late = a_code("Ann"), a_code("Ann")
    join(Client(), "Ida", used)
    clock.goes_on(hours=24)
    a_code("Ann")
    assert JoinCode.objects.count() == 3
    assert "somebody in already" in Client().get(f"/join/{used}/").content.decode()
    assert "was good until" in Client().get(f"/join/{late}/").content.decode()

    clock.goes_on(minutes=16)
    a_code("Ann")
    assert JoinCode.objects.count() == 2
    assert "none of this shed" in Client().get(f"/join/{used}/").content.decode()
