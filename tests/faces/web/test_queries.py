"""No page asks the database more than twelve times, or is more than 50 kB on the air."""

from dataclasses import replace

import pytest
from django.db import connection, transaction
from django.test import Client
from django.test.utils import CaptureQueriesContext

from e2e.pages import PAGES
from shimstock.workshop.demo.lay_out import lay_out
from shimstock.workshop.looking import forget

MOST = 12
HEAVIEST = 50_000  # bytes, packed as they travel


@pytest.fixture(scope="module")
def demo(django_db_setup, django_db_blocker):
    """The demo's shed, laid out once for all pages."""
    with django_db_blocker.unblock(), transaction.atomic():
        lay_out()
        yield
        transaction.set_rollback(True)


@pytest.mark.django_db
@pytest.mark.parametrize("what", PAGES)
def test_a_page_asks_little(what, demo, settings):
    settings.SERVING = replace(settings.SERVING, who="Ida")
    client = Client(headers={"Accept-Encoding": "gzip"})
    client.get(PAGES[what])  # files are found and templates read once
    forget()  # even where nothing is remembered of the machine
    with CaptureQueriesContext(connection) as asked:
        answer = client.get(PAGES[what])

    assert answer.status_code == (404 if what.startswith("no such") else 200)
    assert len(asked) <= MOST, [each["sql"][:120] for each in asked.captured_queries]
    assert answer.headers["Content-Encoding"] == "gzip"
    assert len(answer.content) < HEAVIEST
