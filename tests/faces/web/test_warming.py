"""What a worker loads beside its first answers."""

import sys

import pytest

from shimstock.site import warming


@pytest.fixture(autouse=True)
def stays_open(db, monkeypatch):
    from django.db import connection

    monkeypatch.setattr(connection, "close", lambda: None)  # the test's own connection


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
