"""Joining by a code, signing in and out, and who is named by the diary."""

import re

import pytest
from django.test import Client

from faces.web.people_door import PASSWORD, a_code, is_in, join, sign_in, somebody, to_phones
from shimstock.workshop.models import DiaryEntry, JoinCode, Person


@pytest.fixture(autouse=True)
def door(db, settings, request):
    if "pages" not in request.fixturenames:
        to_phones(settings)


# --- the door ----------------------------------------------------------------------------


@pytest.mark.parametrize("address", ["/", "/people/", "/m/grey/", "/live/?since=0", "/nope/"])
def test_nobody_gets_past_the_door(address, client):
    answer = client.get(address)

    assert answer.status_code == 302
    assert answer.url.startswith("/sign-in/?then=")


def test_a_script_is_told_so_instead_of_being_shown_a_page(client):
    assert client.get("/live/?since=0", headers={"Accept": "application/json"}).status_code == 401


def test_a_part_of_a_page_takes_the_whole_page_to_the_door_and_back(client):
    answer = client.get(
        "/sums/",
        headers={"HX-Request": "true", "HX-Current-URL": "http://testserver/m/grey/?a=1"},
    )

    assert answer.headers["HX-Redirect"] == "/sign-in/?then=%2Fm%2Fgrey%2F%3Fa%3D1"


def test_a_form_that_came_too_late_leads_back_to_its_page(client):
    answer = client.post("/m/grey/note/", headers={"Referer": "http://testserver/m/grey/joint/J1/"})

    assert answer.url.endswith("then=http%3A%2F%2Ftestserver%2Fm%2Fgrey%2Fjoint%2FJ1%2F")


@pytest.mark.parametrize("host", ["evil.example", "192.0.2.99"])
def test_another_name_of_a_host_is_not_answered(host, client):
    assert client.get("/sign-in/", headers={"Host": host}).status_code == 400


def test_the_sign_in_page_says_how_the_first_one_gets_in(client):
    assert b"Nobody has joined yet" in client.get("/sign-in/").content
    somebody()
    assert b"Nobody has joined yet" not in client.get("/sign-in/").content


def test_no_page_says_encrypted_where_it_is_not(client, settings):
    assert b"is not encrypted" in client.get("/sign-in/").content
    to_phones(settings, encrypted=True)
    assert b"is not encrypted" not in client.get("/sign-in/").content


# --- joining -----------------------------------------------------------------------------


def test_who_joins_is_in_and_is_named_by_the_diary(client, grey):
    answer = join(client, "  Ida   B. ")
    client.post("/m/grey/note/", {"about": "machine", "text": "Oil there.", "form": "k1"})

    assert answer.url == "/"
    assert is_in(client)
    assert Person.objects.get().name == "Ida B."
    assert DiaryEntry.objects.latest("pk").who == "Ida B."


def test_a_code_lets_one_in_once_and_only_its_digest_is_kept(client):
    code = a_code("Ann")
    join(client, "Ida", code)
    again = join(Client(), "Ben", code)

    assert again.status_code == 422
    assert "let somebody in already" in again.content.decode()
    assert not Person.objects.filter(name="Ben").exists()
    assert code.replace("-", "") not in str(list(JoinCode.objects.values()))
    assert PASSWORD not in str(list(Person.objects.values()))


@pytest.mark.parametrize(
    ("name", "password", "said"),
    [
        ("Ida", "sh0rt", "too short"),
        ("Ida", "password1", "too common"),
        (" ", PASSWORD, "is no name"),
        ("I" * 101, PASSWORD, "longer than 100"),
        ("Ida\u202eadI", PASSWORD, "cannot be printed"),
    ],
)
def test_what_is_refused_is_said_and_uses_up_no_code(name, password, said, client):
    code = a_code()
    refused = join(client, name, code, password, trusted="on")
    page = refused.content.decode()

    assert refused.status_code == 422
    assert said in page
    assert 'name="trusted" checked' in page  # nothing is lost but the password
    assert password not in page
    assert join(client, "Ida", code).status_code == 302


@pytest.mark.parametrize("name", ["Zoë", "zoë", "ZOE\u0308"])
def test_a_name_is_taken_in_any_case_and_however_it_is_encoded(name):
    somebody("Zoë")
    refused = join(Client(), name, a_code("Zoë"))

    assert refused.status_code == 422
    assert "works here already" in refused.content.decode()
    assert Person.objects.count() == 1


def test_a_code_made_at_the_computer_gives_a_known_name_a_new_password():
    before, after = somebody("Ida"), Client()
    join(after, "ida", a_code(), "another-long-one")

    assert [is_in(before), is_in(after)] == [False, True]
    assert Person.objects.get().name == "Ida"
    assert sign_in(Client(), "Ida").status_code == 422
    assert sign_in(Client(), "Ida", "another-long-one").status_code == 302


def test_a_code_may_be_typed_as_it_is_read(client):
    code = a_code()
    answer = client.get("/join/", {"code": f" {code.lower().replace('-', ' ')}"})

    assert answer.url == f"/join/{code}/"
    assert client.get(answer.url).status_code == 200


# --- signing in and out ------------------------------------------------------------------


@pytest.mark.parametrize("name", ["Ida", "IDA", " ida "])
def test_name_and_password_let_in_and_lead_on(name, client):
    somebody("Ida")
    answer = sign_in(client, name, then="/sums/?q=torque")

    assert answer.url == "/sums/?q=torque"
    assert is_in(client)


@pytest.mark.parametrize(
    "then", ["https://evil.example/", "//evil.example/", "javascript:alert(1)", "/\\evil.example"]
)
def test_it_leads_to_pages_of_this_shed_only(then, client):
    somebody("Ida")

    assert 'name="then" value="/"' in client.get("/sign-in/", {"then": then}).content.decode()
    assert sign_in(client, "Ida", then=then).url == "/"


def test_a_wrong_password_and_an_unknown_name_are_answered_alike(client):
    somebody("Ida")
    answers = [sign_in(client, "Ida", "not-her-password"), sign_in(client, "Ben", "not-his")]
    pages = [re.sub(r'value="[^"]*"', "", each.content.decode()) for each in answers]

    assert [each.status_code for each in answers] == [422, 422]
    assert pages[0] == pages[1]
    assert "do not belong together" in pages[0]


@pytest.mark.parametrize("name", ["Ida", "Nobody"])
def test_a_miss_costs_one_hash_whether_the_name_is_known_or_not(name, client, monkeypatch):
    from django.contrib.auth.hashers import ScryptPasswordHasher

    somebody("Ida")
    hashed = []
    encode = ScryptPasswordHasher.encode
    monkeypatch.setattr(
        ScryptPasswordHasher, "encode", lambda *given: hashed.append(1) or encode(*given)
    )
    sign_in(client, name, "not-the-password")

    assert len(hashed) == 1


def test_the_key_of_the_session_is_new_at_each_sign_in(client):
    somebody("Ida")
    keys = []
    for _ in range(2):
        sign_in(client, "Ida")
        keys.append(client.cookies["shed"].value)

    assert len(set(keys)) == 2
    stale = Client()
    stale.cookies["shed"] = keys[0]
    assert [is_in(stale), is_in(client)] == [False, True]


def test_a_key_that_was_planted_before_is_worth_nothing_after(client):
    somebody("Ida")
    client.cookies["shed"] = "planted0123456789planted012345678"
    sign_in(client, "Ida")

    assert client.cookies["shed"].value != "planted0123456789planted012345678"


def test_signing_out_ends_it_on_this_device():
    here, there = somebody("Ida"), Client()
    sign_in(there, "Ida")
    key = here.cookies["shed"].value
    here.post("/sign-out/")
    stale = Client()
    stale.cookies["shed"] = key

    assert [is_in(here), is_in(stale), is_in(there)] == [False, False, True]


@pytest.mark.parametrize("address", ["/sign-out/", "/people/let-in/", "/people/end/1/"])
def test_looking_at_an_address_that_acts_does_nothing(address):
    ida = somebody("Ida")
    codes = JoinCode.objects.count()

    assert ida.get(address).status_code == 302
    assert is_in(ida)
    assert JoinCode.objects.count() == codes


@pytest.mark.parametrize("address", ["/sign-in/", "/sign-out/", "/join/X/", "/people/let-in/"])
def test_a_form_from_elsewhere_is_refused(address, client):
    strict = Client(enforce_csrf_checks=True)
    strict.cookies = somebody("Ida").cookies
    codes = JoinCode.objects.count()

    assert strict.post(address, {"name": "Ida", "password": PASSWORD}).status_code == 403
    assert is_in(strict)
    assert JoinCode.objects.count() == codes


def test_a_form_of_ours_is_taken():
    somebody("Ida")
    strict = Client(enforce_csrf_checks=True)
    mark = re.search(
        r'csrfmiddlewaretoken" value="(\w+)"', strict.get("/sign-in/").content.decode()
    )

    assert sign_in(strict, "Ida", csrfmiddlewaretoken=mark[1]).status_code == 302


# --- to this computer alone --------------------------------------------------------------


def test_where_only_this_computer_asks_nobody_signs_in(pages):
    page = pages.get("/people/").content.decode()

    assert "nobody signs in" in page
    assert "Ann" in page
    assert [pages.get(each).status_code for each in ("/sign-in/", "/join/X/")] == [302, 302]
    assert pages.post("/people/let-in/").status_code == 302
    assert not JoinCode.objects.exists()
