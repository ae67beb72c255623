"""What a worker loads beside its first answers."""

import sys

import pytest

from shimstock.site import warming


@pytest.fixture(autouse=True)
def stays_open(db, monkeypatch):
    """The test's own connection; how often it was to be closed."""
    from django.db import connection

    closed: list[bool] = []
    monkeypatch.setattr(connection, "close", lambda: closed.append(True))
    return closed


def test_every_template_and_every_address_is_loaded(monkeypatch):
    from django.template import loader

    loaded = []
    monkeypatch.setattr(loader, "get_template", loaded.append)
    monkeypatch.setattr(warming, "_look_at_machines", lambda: None)  # needs the templates
    monkeypatch.setattr(warming.log, "exception", pytest.fail)
    warming.warm_up()

    assert {"web/base.html", "web/sign_in.html", "web/shed.html"} <= set(loaded)
    assert "shimstock.faces.web.urls" in sys.modules


def test_a_fault_in_it_ends_nothing(monkeypatch):
    def broken() -> None:
        raise RuntimeError("no such luck")

    monkeypatch.setattr(warming, "_load_pages", broken)
    warming.warm_up()


@pytest.mark.django_db(transaction=True)  # what is committed is remembered
def test_a_machine_that_changed_is_looked_at_again_before_anybody_asks(pages):
    from shimstock.workshop import acts
    from shimstock.workshop.looking import see

    stood = warming.look_at_changed({})
    assert warming.look_at_changed(stood) == stood
    acts.write_note(machine="grey", about="machine", text="back again", who="Ann")

    assert "card" not in see("grey").made
    assert warming.look_at_changed(stood) != stood
    assert "card" in see("grey").made


def test_it_goes_on_until_it_is_over(monkeypatch):
    rounds = []

    class Over:
        def wait(self, seconds):
            return len(rounds) > 2

    def look(stood):
        rounds.append(stood)
        if len(rounds) == 2:
            raise RuntimeError("the disk was away for a moment")
        return {1: len(rounds)}

    monkeypatch.setattr(warming, "warm_up", lambda: None)
    monkeypatch.setattr(warming, "look_at_changed", look)
    warming.keep_warm(Over())

    assert rounds == [{}, {1: 1}, {1: 1}]


@pytest.mark.django_db(transaction=True)
def test_where_nothing_changed_no_page_is_made(monkeypatch):
    from shimstock.trade.machine.starters import starter_text
    from shimstock.workshop import acts

    acts.add_machine(
        slug="grey", name="Grey", book_text=starter_text("two-cylinder-diesel"), who="Ann"
    )
    opened = []
    monkeypatch.setattr(warming, "_open", opened.append)
    stood = warming.look_at_changed({})

    warming.look_at_changed(stood)

    assert stood and opened == []


def test_it_gives_its_connection_back_whatever_happens(stays_open, monkeypatch):
    monkeypatch.setattr(warming, "_load_pages", lambda: 1 / 0)

    warming.warm_up()

    assert stays_open == [True]


@pytest.mark.django_db(transaction=True)
def test_the_machine_that_people_are_at_is_looked_at_first(monkeypatch, pages):
    from shimstock.workshop import acts, looking
    from workshop.shed_book import TEXT

    for slug in ("red", "blue"):
        acts.add_machine(slug=slug, name=slug, book_text=TEXT, who="Ann")
    acts.write_note(machine="red", about="machine", text="back again", who="Ann")
    looked, see = [], looking.see
    monkeypatch.setattr(looking, "see", lambda slug: looked.append(slug) or see(slug))
    monkeypatch.setattr(warming, "_open", lambda *_: None)
    monkeypatch.setattr(warming.log, "exception", pytest.fail)
    warming.warm_up()

    assert looked == ["red", "blue", "grey"]


@pytest.mark.django_db(transaction=True)
def test_searches_that_go_on_are_looked_at_and_those_that_ended_are_not(monkeypatch):
    from shimstock.workshop import acts
    from workshop.fault_shed import add_diesel

    for slug in ("diesel", "other"):
        add_diesel(slug)
        acts.begin_search(machine=slug, who="Ida")
    acts.end_search(machine="diesel", given_up=True, who="Ida")
    opened = []
    monkeypatch.setattr(warming, "_open", lambda *page: opened.append(page))
    monkeypatch.setattr(warming.log, "exception", pytest.fail)
    warming.warm_up()

    assert [each for each in opened if each[0] == "fault"] == [("fault", "other", "1")]
