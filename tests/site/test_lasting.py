"""A connection lasts from page to page, but not past the file that it opened."""

import sqlite3
from contextlib import closing

import django
import pytest
from django.conf import settings
from django.core.signals import request_started
from django.db.backends.signals import connection_created
from django.db.utils import ConnectionHandler

from shimstock.site import lasting


@pytest.fixture(scope="module", autouse=True)
def set_up():
    """Django asks no database before it has its rooms."""
    django.setup()


def a_file(path, word):
    with closing(sqlite3.connect(path)) as made:
        made.execute("CREATE TABLE told (word TEXT)")
        made.execute("INSERT INTO told VALUES (?)", [word])
        made.commit()


@pytest.fixture
def connection(tmp_path, monkeypatch, django_db_blocker):
    """A connection to a file, as a worker has it."""
    a_file(tmp_path / "now.sqlite3", "first")
    of_file = {"ENGINE": "django.db.backends.sqlite3", "NAME": tmp_path / "now.sqlite3"}
    handler = ConnectionHandler({"default": of_file})
    monkeypatch.setattr(lasting, "connections", handler)
    lasting.leave_what_was_replaced()
    with django_db_blocker.unblock():
        yield handler["default"]
    connection_created.disconnect(lasting._note)
    request_started.disconnect(lasting._leave)
    handler.close_all()


def told(connection):
    with connection.cursor() as cursor:
        return cursor.execute("SELECT word FROM told").fetchone()[0]


def test_it_lasts_from_page_to_page(connection):
    told(connection)
    opened = connection.connection
    lasting._leave(sender=None)

    assert opened is not None
    assert connection.connection is opened


def test_a_file_put_in_its_place_is_opened_before_the_next_page(connection, tmp_path):
    assert told(connection) == "first"
    a_file(tmp_path / "other.sqlite3", "put back")
    (tmp_path / "other.sqlite3").replace(tmp_path / "now.sqlite3")
    lasting._leave(sender=None)

    assert told(connection) == "put back"


def test_each_page_looks_first(connection):
    receivers, _ = request_started._live_receivers(None)

    assert lasting._leave in receivers


def test_the_shed_is_opened_once_for_many_pages():
    assert settings.DATABASES["default"]["CONN_MAX_AGE"] is None
