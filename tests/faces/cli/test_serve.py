"""What `serve` and `let-in` say; the server itself is a stand-in here that ends at once."""

import json
from dataclasses import dataclass

import pytest

from shimstock.faces.cli.program import MADE

ADDRESS = "http://192.0.2.20:8140"


@dataclass
class Started:
    """What the server was started with."""

    serving: object = None
    listening: object = None


@pytest.fixture
def started(monkeypatch, in_demo) -> Started:
    from shimstock.site import network, server

    seen = Started()

    def serve(serving, listening, shed, answers):
        seen.serving, seen.listening = serving, listening
        answers()

    monkeypatch.setattr(server, "serve", serve)
    monkeypatch.setattr(server, "check", lambda listening: None)
    monkeypatch.setattr(network, "addresses", lambda: ("192.0.2.20",))
    monkeypatch.setattr(network, "local_name", lambda: "shed.local")
    return seen


@pytest.fixture
def ida(db):
    from django.utils import timezone

    from shimstock.workshop.models import Person

    return Person.objects.create(name="Ida", password="!", joined_at=timezone.now())


def codes():
    from shimstock.workshop.models import JoinCode

    return JoinCode.objects.count()


def test_alone_it_is_for_this_computer_and_whoever_typed_it(started, run):
    ran = run("shimstock serve")

    assert (ran.code, ran.out) == (0, "Ended. What was kept stays kept.\n")
    assert "http://localhost:8140" in ran.err
    assert started.listening.address == "127.0.0.1"
    assert (started.serving.sign_in, started.serving.who) == (False, "Ida")
    assert codes() == 0


def test_to_phones_it_shows_every_address_and_that_it_is_not_encrypted(started, ida, run):
    ran = run("shimstock serve --lan --name the-shed.example")

    assert started.listening.address == "0.0.0.0"
    assert started.serving.sign_in
    for host in ("the-shed.example", "192.0.2.20", "shed.local"):
        assert f"http://{host}:8140" in ran.err
    assert "Not encrypted" in ran.err
    assert codes() == 0  # somebody has joined: others are let in on the page


def test_where_nobody_has_joined_it_lets_the_first_one_in(started, run):
    ran = run("shimstock serve --lan")

    assert "Nobody has joined yet" in ran.err
    assert f"{ADDRESS}/join/" in ran.err
    assert codes() == 1


def test_with_a_certificate_it_is_https(started, ida, run, tmp_path):
    ran = run("shimstock serve --lan --cert c.pem --key k.pem")

    assert started.serving.encrypted
    assert started.listening.cert == str(tmp_path / "c.pem")
    assert "https://192.0.2.20:8140" in ran.err
    assert "Not encrypted" not in ran.err


def test_down_a_pipe_it_is_plain_and_fits_80_columns(started, run):
    ran = run("shimstock serve --lan")

    assert "\x1b" not in ran.err
    assert [line for line in ran.err.splitlines() if len(line) > 80] == []


def test_json_is_one_object_with_the_keys_that_the_help_names(started, run):
    ran = run("shimstock serve --lan --json")

    assert json.loads(ran.out).keys() == MADE["serve"].keys.keys()
    assert json.loads(ran.out)["address"] == ADDRESS


def test_its_example_works(started, run):
    assert run(MADE["serve"].example).code == 0


def test_a_name_without_phones_is_not_understood(started, run):
    ran = run("shimstock serve --name shed.example")

    assert ran.code == 2
    assert "--lan" in ran.err


def test_the_square_on_a_terminal_holds_the_address(started, ida, run, monkeypatch):
    import segno

    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    ran = run("shimstock serve --lan")
    rows = [line for line in ran.err.splitlines() if line.startswith("\x1b")]

    assert dark(rows) == [bytes(row) for row in segno.make(ADDRESS, error="l", micro=False).matrix]


def dark(rows: list[str]) -> list[bytes]:
    """The dark modules between the quiet edges, from half blocks of light."""
    light = {"█": (0, 0), "▀": (0, 1), "▄": (1, 0), " ": (1, 1)}
    cells = [[light[each] for each in row.split("m", 1)[1].removesuffix("\x1b[0m")] for row in rows]
    halves = [bytes(cell[half] for cell in row) for row in cells for half in (0, 1)]
    size = len(halves[0])
    return [row[4 : size - 4] for row in halves[4 : size - 4]]


def test_let_in_makes_a_code_for_where_the_shed_was_last_served(started, run):
    before = json.loads(run("shimstock let-in --json").out)
    run("shimstock serve --lan")
    after = json.loads(run("shimstock let-in --json").out)

    assert before["address"] == ""
    assert after["address"] == f"{ADDRESS}/join/{after['code']}/"
    assert codes() == 3
    assert f"{ADDRESS}/join/" in run("shimstock let-in").out


def test_the_code_of_let_in_may_renew_a_password(ida, started, run):
    from shimstock.workshop import people

    code = json.loads(run("shimstock let-in --json").out)["code"]
    found = people.look_at_code(code, "192.0.2.30")
    people.join(found, name="ida", password="rust-and-paraffin")

    assert (
        people.check_sign_in(name="Ida", password="rust-and-paraffin", address="192.0.2.30") == ida
    )


@pytest.fixture(autouse=True)
def nothing_noted():
    """The tests share one folder: what one of them notes there is none of another's."""
    from django.conf import settings

    from shimstock.site.serving import NOTED

    yield
    (settings.SHED / NOTED).unlink(missing_ok=True)
