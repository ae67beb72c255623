"""A small machine behind the pages, and a browser without a screen, in which Ann is there."""

from __future__ import annotations

from dataclasses import replace

import django
import pytest

from workshop.shed_book import MONDAY, TEXT


@pytest.hookimpl(trylast=True)
def pytest_configure() -> None:
    django.setup()  # after the settings were named, before the tests here import the tables


@pytest.fixture
def grey(db):
    """The entry with which a machine was booked in."""
    from shimstock.workshop import acts

    return acts.add_machine(slug="grey", name="The grey one", book_text=TEXT, who="Ann", at=MONDAY)


@pytest.fixture
def pages(client, settings, grey):
    """A client in which Ann is there; `/m/grey/…` are the machine's pages."""
    settings.SERVING = replace(settings.SERVING, who="Ann")
    return client
