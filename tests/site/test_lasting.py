"""A connection lasts from page to page, but not past the file that it opened."""

import os
import sqlite3
import subprocess
import sys
from contextlib import closing

import django
import pytest
from django.conf import settings
from django.core.signals import request_started
from django.db.backends.signals import connection_created
from django.db.utils import ConnectionHandler

from shimstock.site import lasting
from shimstock.site.server import COLD
from shimstock.workshop import file_opened, looking


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
    connection_created.disconnect(file_opened.note_opened)
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


def test_a_file_with_the_same_number_on_another_device_is_another(connection, monkeypatch):
    told(connection)
    opened, numbers = connection.connection, os.stat(connection.settings_dict["NAME"])
    moved = os.stat_result((*numbers[:2], numbers.st_dev + 1, *numbers[3:]))
    with monkeypatch.context() as patched:
        patched.setattr(file_opened.os, "stat", lambda _: moved)
        lasting._leave(sender=None)

    assert moved.st_ino == numbers.st_ino
    assert connection.connection is not opened


def test_what_is_remembered_of_a_file_is_forgotten_with_it(connection, tmp_path, monkeypatch):
    """A file that is put back later may be given the number of one that is gone."""
    told(connection)
    monkeypatch.setitem(looking._remembered, (None, 1, 1, None), "as it stood")
    lasting._leave(sender=None)
    assert looking._remembered
    a_file(tmp_path / "other.sqlite3", "put back")
    (tmp_path / "other.sqlite3").replace(tmp_path / "now.sqlite3")
    lasting._leave(sender=None)

    assert not looking._remembered


def test_the_server_has_each_page_look_first(tmp_path):
    """In a program of its own, as the server is: what one test leaves, another would find."""
    asked = (
        "from shimstock.site import lasting, wsgi\n"
        "from django.core.signals import request_started\n"
        "from django.db.backends.signals import connection_created\n"
        "from shimstock.workshop.file_opened import note_opened\n"
        "assert lasting._leave in request_started._live_receivers(None)[0]\n"
        "assert note_opened in connection_created._live_receivers(None)[0]\n"
    )
    where = {"SHIMSTOCK_SHED": str(tmp_path), COLD: "1"}
    subprocess.run([sys.executable, "-c", asked], env=os.environ | where, check=True)


def test_each_page_looks_first(connection):
    receivers, _ = request_started._live_receivers(None)

    assert lasting._leave in receivers


def test_the_shed_is_opened_once_for_many_pages():
    assert settings.DATABASES["default"]["CONN_MAX_AGE"] is None
