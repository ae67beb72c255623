"""The devices that are signed in: how long, what the page says of them, and how they are ended."""

import re
from xml.etree import ElementTree

import pytest
import segno
from django.contrib.sessions.models import Session
from django.test import Client

from faces.web.people_door import Clock, is_in, join, sign_in, somebody, to_phones
from shimstock.workshop.models import Device, JoinCode


@pytest.fixture(autouse=True)
def clock(db, settings, monkeypatch):
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]  # quick
    to_phones(settings)
    return Clock(monkeypatch)


def test_ones_own_phone_stays_for_a_season(clock):
    phone = Client()
    join(phone, "Ida", trusted="on")

    assert int(phone.cookies["shed"]["max-age"]) == 200 * 24 * 3600
    clock.goes_on(days=199)
    assert is_in(phone)
    clock.goes_on(days=2)
    assert not is_in(phone)


def test_another_device_stays_until_its_browser_is_closed_and_half_a_day_at_most(clock):
    tablet = somebody("Ida")

    assert tablet.cookies["shed"]["max-age"] == ""
    clock.goes_on(hours=11)
    assert is_in(tablet)
    clock.goes_on(hours=2)
    assert not is_in(tablet)


def test_the_page_lists_each_device_with_its_person(clock):
    somebody("Ida")
    ben = Client()
    join(ben, "Ben", trusted="on")
    page = ben.get("/people/").content.decode()

    assert len(re.findall('class="device"', page)) == 2
    assert "Ida</strong> on a phone" in page
    assert "Ben</strong> on a phone (this one)" in page
    assert [page.count("for a season"), page.count("12 hours at most")] == [1, 1]


@pytest.mark.parametrize(
    ("says", "called"),
    [
        ("Mozilla/5.0 (Unknown; Mobile; rv:1) Invented/1", "phone"),
        ("Mozilla/5.0 (Unknown; Tablet; rv:1) Invented/1", "tablet"),
        ("Mozilla/5.0 (Unknown) Invented/1", "computer or tablet"),
        ("", "computer or tablet"),
    ],
)
def test_a_device_is_called_what_it_is(says, called):
    somebody("Ida")
    client = Client(headers={"User-Agent": says})
    sign_in(client, "Ida")

    assert Device.objects.last().called == called


def test_anybody_who_is_in_ends_any_device():
    ida, ben = somebody("Ida"), somebody("Ben")
    device = Device.objects.get(person__name="Ida")
    answer = ben.post(f"/people/end/{device.pk}/", follow=True)
    device.refresh_from_db()

    assert "Ida is signed out on the phone" in answer.content.decode()
    assert [is_in(ida), is_in(ben)] == [False, True]
    assert device.ended_at is not None
    assert not Session.objects.filter(session_key=device.session).exists()
    assert ben.post(f"/people/end/{device.pk}/").status_code == 404  # only once


def test_that_it_is_in_use_is_written_down_every_ten_minutes_at_most(
    clock, django_assert_num_queries
):
    ida = somebody("Ida")
    joined = Device.objects.get().seen_at
    clock.goes_on(minutes=9)
    ida.get("/nope/")
    assert Device.objects.get().seen_at == joined

    clock.goes_on(minutes=2)
    ida.get("/nope/")
    assert Device.objects.get().seen_at == clock.now


def test_knowing_who_is_there_costs_two_queries_at_most(django_assert_max_num_queries):
    ida = somebody("Ida")
    with django_assert_max_num_queries(2):
        assert ida.get("/nope/").status_code == 404


def test_the_page_of_people_costs_few_queries(django_assert_max_num_queries):
    for name in ("Ann", "Ben", "Zoe"):
        somebody(name)
    ida = somebody("Ida")
    with django_assert_max_num_queries(6):
        ida.get("/people/")


def test_a_code_made_on_the_page_lets_in_and_its_square_holds_the_address():
    page = somebody("Ida").post("/people/let-in/").content.decode()
    [address] = set(re.findall(r"http://192\.0\.2\.20:8140/join/[A-Z0-9-]+/", page))
    [svg] = re.findall(r"<svg.*?</svg>", page, re.DOTALL)

    assert JoinCode.objects.last().made_by == "Ida"
    assert address.split("/")[-2] in re.sub("<[^>]+>", "", page)  # as text, to be typed
    assert drawn(svg) == [bytes(row) for row in segno.make(address, error="m", micro=False).matrix]
    assert Client().get(f"/join/{address.split('/')[-2]}/").status_code == 200


def drawn(svg: str) -> list[bytes]:
    """The dark modules of a square, from the strokes that a browser draws."""
    root = ElementTree.fromstring(svg)
    size = int(root.attrib["viewBox"].split()[-1])
    rows = [bytearray(size) for _ in range(size)]
    [path] = [each.attrib["d"] for each in root if "stroke" in each.attrib]
    x = y = 0.0
    for command, numbers in re.findall(r"([Mmh])([^Mmh]*)", path):
        steps = [float(each) for each in re.findall(r"-?[\d.]+", numbers)]
        if command == "h":
            rows[int(y)][int(x) : int(x + steps[0])] = b"\1" * int(steps[0])
            x += steps[0]
        else:
            x, y = steps if command == "M" else (x + steps[0], y + steps[1])
    return [bytes(row[4:-4]) for row in rows[4:-4]]
