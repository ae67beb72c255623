"""Opening a shed: what must hold, and what happens to the database in it.

Django is set up once in a program, so each opening here is a program of its own.
"""

import os
import sqlite3
import subprocess
import sys
from contextlib import closing

import pytest

from shimstock.site.start import CannotStart, _check_sqlite, start

OPEN = """
import sys
from pathlib import Path
from shimstock.site.start import CannotStart, start
try:
    start(Path(sys.argv[1]))
except CannotStart as error:
    sys.exit(str(error))
from django.db import connection
with connection.cursor() as cursor:
    for pragma in ["journal_mode", "synchronous", "foreign_keys"]:
        print(pragma, cursor.execute(f"PRAGMA {pragma}").fetchone()[0])
"""


def opened(shed):
    return subprocess.run([sys.executable, "-c", OPEN, str(shed)], capture_output=True, text=True)


def tables(database):
    with closing(sqlite3.connect(database)) as connection:
        return {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}


@pytest.fixture
def shed(tmp_path):
    """A shed that was opened once."""
    first = opened(tmp_path / "shed")
    assert first.returncode == 0, first.stderr
    return tmp_path / "shed"


def test_a_new_shed_is_laid_out_and_says_nothing(tmp_path):
    first = opened(tmp_path / "barn" / "shed")

    assert first.stderr == ""
    assert "django_migrations" in tables(tmp_path / "barn" / "shed" / "workshop.sqlite3")
    assert list(tmp_path.rglob("*.before-*")) == []


@pytest.mark.skipif(os.name != "posix", reason="rights of files are told otherwise there")
def test_a_new_shed_is_its_owners_alone(shed):
    """Its database holds the keys of who is signed in."""
    assert shed.stat().st_mode & 0o077 == 0


def test_what_was_kept_outlives_a_pulled_plug(shed):
    """Words of the database's own manual: WAL with synchronous=FULL (2) is durable."""
    assert opened(shed).stdout.split("\n")[:3] == [
        "journal_mode wal",
        "synchronous 2",
        "foreign_keys 1",
    ]


def test_a_folder_that_cannot_be_written_is_named(tmp_path):
    (tmp_path / "shed").write_text("a file, where a folder should be")

    refused = opened(tmp_path / "shed")

    assert refused.returncode == 1
    assert f"Cannot write in the shed's folder {tmp_path / 'shed'}" in refused.stderr
    assert "--shed DIR" in refused.stderr


def test_a_file_that_is_no_database_is_named_and_left_alone(tmp_path):
    (tmp_path / "workshop.sqlite3").write_text("a shopping list, nothing else" * 40)

    refused = opened(tmp_path)

    assert refused.returncode == 1
    assert "not a database" in refused.stderr
    assert (tmp_path / "workshop.sqlite3").read_text().startswith("a shopping list")


def test_a_database_made_by_a_newer_version_is_not_touched(shed):
    with closing(sqlite3.connect(shed / "workshop.sqlite3")) as connection, connection:
        connection.execute(
            "INSERT INTO django_migrations (app, name, applied)"
            " VALUES ('workshop', '9000_of_tomorrow', '2026-01-01')"
        )

    refused = opened(shed)

    assert refused.returncode == 1
    assert "made by a newer shimstock" in refused.stderr
    assert "workshop.9000_of_tomorrow" in refused.stderr


def test_an_old_sqlite_is_named_with_what_would_do():
    with pytest.raises(CannotStart, match=r"brings SQLite 3\.30\.1; shimstock needs 3\.31\.0"):
        _check_sqlite((3, 30, 1))


def test_one_program_opens_one_shed(tmp_path):
    with pytest.raises(CannotStart, match="already has the shed"):
        start(tmp_path / "another")
